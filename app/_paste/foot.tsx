"use client";
/** Under the preview: how many rows are ready, how long the class becomes, and the act itself. */
import { freeWords } from "#lib/clock/length-words.ts";
import { countsWords } from "#lib/paste/judge.ts";
import { agree, clockTime, plural } from "#lib/plan/format.ts";
import styles from "./paste.module.css";
import type { Paste } from "./use-paste.ts";

interface FootProps {
  readonly paste: Paste;
  /** Seconds of the class as it is, and as it should be. */
  readonly now: number;
  readonly length: number;
  readonly problem: string | null;
  readonly onPut: () => void;
  readonly onDoubt: () => void;
  readonly onLeaveOut: (keys: readonly string[]) => void;
}

export function Foot({ paste, now, length, problem, onPut, onDoubt, onLeaveOut }: FootProps) {
  const { rows, drafts } = paste;
  const doubtful = rows.filter((row) => row.state === "doubt");
  const ready = rows.filter((row) => row.state === "ready").length;
  const open = doubtful.length > 0;
  return (
    <div className={styles.foot}>
      <div className={styles.sums}>
        <p role="status">
          <b>{paste.behind ? "Reading the list" : rows.length === 0 ? "Nothing to put in yet" : countsWords(rows)}</b>
        </p>
        {rows.length > 0 && (
          <p className="small">
            The class now <b className="mono">{clockTime(now)}</b>, with {agree(ready, "this row", "these rows")}{" "}
            <b className="mono">{clockTime(paste.totalWith)}</b> of {clockTime(length)},{" "}
            {freeWords(paste.totalWith, length)}.
          </p>
        )}
        {open && (
          <p id="paste-open" className="small quiet">
            Nothing in doubt is put in: answer it, skip its row, or leave such rows out.
          </p>
        )}
        {problem && (
          <p className="problem" role="alert">
            {problem}
          </p>
        )}
      </div>
      <div className={styles.footActs}>
        {open && (
          <>
            <button type="button" className="button" onClick={onDoubt}>
              Next doubt
            </button>
            <button type="button" className="button" onClick={() => onLeaveOut(doubtful.map((row) => row.reading.key))}>
              Leave {plural(doubtful.length, "doubtful row")} out
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
          Put in {plural(drafts.length, "item")}
        </button>
      </div>
    </div>
  );
}
