/** The seconds of a change in their dark tab. While held, the word stands where they were. */
import { secondsFigure } from "#lib/floor/time-words.ts";
import type { FloorView } from "#lib/floor/view.ts";
import styles from "./change.module.css";
import { CHANGE, TO_CHANGE } from "./change-words.ts";

export function ChangeTime({ view, unsure }: { readonly view: FloorView; readonly unsure: boolean }) {
  const figure = secondsFigure(view.secondsLeft);
  return (
    <span className={styles.tab} role="timer" aria-live="off" data-held={view.held}>
      <span className={styles.figure} data-long={figure.length > 2}>
        {figure}
      </span>
      <span className={styles.unit}>{view.held ? "held" : unsure ? `about, ${CHANGE}` : CHANGE}</span>
      {view.held && <span className={styles.stopped}>{TO_CHANGE}</span>}
    </span>
  );
}
