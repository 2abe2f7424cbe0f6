"use client";
/** Under the preview: how many rows are ready, how long the class becomes, and the button that adds them. */
import { useState } from "react";
import { plural } from "#lib/plan/format.ts";
import styles from "./paste.module.css";
import { classLengthWords, DOUBTS_STAY_OUT, listReadWords } from "./paste-words.ts";
import type { Paste } from "./use-paste.ts";

interface FootProps {
  readonly paste: Paste;
  /** Seconds of the class as it is and as it should be. */
  readonly now: number;
  readonly length: number;
  /** Adds the items; null when they were added, else one sentence that says why not. */
  readonly putIn: () => string | null;
  readonly onPut: () => void;
  readonly onDoubt: () => void;
  readonly onLeaveOut: (keys: readonly string[]) => void;
}

export function Foot(props: FootProps) {
  const [problem, setProblem] = useState<string | null>(null);
  const { rows } = props.paste;
  const doubtful = rows.filter((row) => row.state === "doubt").map((row) => row.reading.key);
  return (
    <div className={styles.foot}>
      <Sums {...props} problem={problem} open={doubtful.length > 0} />
      <Acts
        {...props}
        doubtful={doubtful}
        onPut={() => {
          const refused = props.putIn();
          setProblem(refused);
          if (refused === null) props.onPut();
        }}
      />
    </div>
  );
}

interface SumsProps extends Pick<FootProps, "paste" | "now" | "length"> {
  readonly problem: string | null;
  /** Some rows are still in doubt. */
  readonly open: boolean;
}

function Sums({ paste, now, length, problem, open }: SumsProps) {
  const { rows } = paste;
  const ready = rows.filter((row) => row.state === "ready").length;
  return (
    <div className={styles.sums}>
      <p role="status">
        <b>{listReadWords(rows, paste.behind)}</b>
      </p>
      {rows.length > 0 && (
        <p className="small">{classLengthWords(ready, { now, withRows: paste.totalWith, length })}</p>
      )}
      {open && (
        <p id="paste-open" className="small quiet">
          {DOUBTS_STAY_OUT}
        </p>
      )}
      {problem && (
        <p className="problem" role="alert">
          {problem}
        </p>
      )}
    </div>
  );
}

interface ActsProps extends Pick<FootProps, "paste" | "onPut" | "onDoubt" | "onLeaveOut"> {
  /** Keys of the rows in doubt. */
  readonly doubtful: readonly string[];
}

function Acts({ paste: { drafts }, onPut, onDoubt, onLeaveOut, doubtful }: ActsProps) {
  const open = doubtful.length > 0;
  return (
    <div className={styles.footActs}>
      {open && (
        <>
          <button type="button" className="button" onClick={onDoubt}>
            Next doubt
          </button>
          <button type="button" className="button" onClick={() => onLeaveOut(doubtful)}>
            Leave out {plural(doubtful.length, "doubtful row")}
          </button>
        </>
      )}
      <button
        type="button"
        className="button button-strong"
        data-put
        aria-disabled={open || drafts.length === 0}
        aria-describedby={open ? "paste-open" : undefined}
        onClick={() => (open ? onDoubt() : drafts.length > 0 && onPut())}
      >
        Add {plural(drafts.length, "item")}
      </button>
    </div>
  );
}
