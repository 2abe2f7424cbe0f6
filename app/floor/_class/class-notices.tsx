"use client";
/** What the coach has to know while the class runs, between the top of the screen and the move. */
import { type ReactNode, useState } from "react";
import { minutesSeconds } from "#lib/floor/time-words.ts";
import type { Awake } from "../_parts/awake.ts";
import type { RunningClass } from "../_parts/use-class.ts";
import { SCREEN_MAY_GO_DARK, sleptWords } from "./class-words.ts";
import styles from "./live-class.module.css";

interface Props {
  readonly live: RunningClass;
  /** That a sheet closed by itself, in words; null for nothing. */
  readonly closed: string | null;
  readonly awake: Awake;
  /** Something is asked below: what can wait is not said. */
  readonly asked: boolean;
  /** What concerns other screens. */
  readonly children: ReactNode;
}

export function ClassNotices({ live, closed, awake, asked, children }: Props) {
  const { view, undoable, sleptSeconds, answerSleep } = live;
  const mayGoDark = (awake === "refused" || awake === "unknown-here") && view.phase === "opening" && !asked;
  return (
    <div className={styles.notices}>
      {children}
      {mayGoDark && <p className={styles.aside}>{SCREEN_MAY_GO_DARK}</p>}
      {undoable?.did && (
        <p className={styles.did} role="status">
          {undoable.did}
        </p>
      )}
      {closed && (
        <p className={styles.did} role="status">
          {closed}
        </p>
      )}
      {sleptSeconds > 0 && <Slept seconds={sleptSeconds} onAnswer={answerSleep} />}
    </div>
  );
}

function Slept({ seconds, onAnswer }: { seconds: number; onAnswer(jump: boolean): void }) {
  const [figure] = useState(() => minutesSeconds(seconds));
  return (
    <p className={styles.slept} role="alert">
      {sleptWords(figure)}
      <button type="button" className="button" onClick={() => onAnswer(false)}>
        Go on from here
      </button>
      <button type="button" className="button" onClick={() => onAnswer(true)}>
        Jump ahead {figure}
      </button>
    </p>
  );
}
