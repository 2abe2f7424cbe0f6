/** The seconds of a screen that follows, with what they are seconds of; hollow and "about" while nobody confirms them. */

import { secondsFigure, unitWords } from "#lib/floor/time-words.ts";
import type { FloorView } from "#lib/floor/view.ts";
import styles from "./follow.module.css";

export function Figure({ view, unsure }: { view: FloorView; unsure: boolean }) {
  const figure = secondsFigure(view.secondsLeft);
  const counting = view.countIn !== null && !view.held && !unsure;
  return (
    <div className={styles.seconds} role="timer" aria-live="off" data-held={view.held} data-counting={counting}>
      <span className={styles.figure} data-long={figure.length > 2}>
        {figure}
      </span>
      <span className={styles.unit}>
        {unsure ? "about, " : ""}
        {view.held ? "held" : unitWords(view)}
      </span>
    </div>
  );
}
