"use client";
/** Before the class is made to end on time: what that changes, kept true second by second, and one touch that takes it. */
import { latenessSentence } from "#lib/floor/words.ts";
import { FitText } from "./fit-text.tsx";
import styles from "./on-time-sheet.module.css";
import type { RunningClass } from "./use-class.ts";

interface Props {
  readonly live: RunningClass;
  onClose(): void;
}

const SIZES = [30, 26, 23, 20, 18, 16, 14, 13] as const;

export function OnTimeSheet({ live, onClose }: Props) {
  const { takes, rows, sentences } = live.preview();
  const take = () => {
    live.endOnTime();
    onClose();
  };
  return (
    <section className={styles.sheet} role="dialog" aria-label="End on time">
      <h2>{latenessSentence(live.view.lateBy)}</h2>
      <FitText className={styles.what} sizes={SIZES} text={JSON.stringify([rows, sentences])}>
        {sentences.map((sentence) => (
          <p key={sentence}>{sentence}</p>
        ))}
        <ul>
          {rows.map((row) => (
            <li key={row.id}>
              <span>{row.name}</span>
              <span className={styles.seconds}>
                {row.from} to <strong>{row.to} s</strong>
              </span>
            </li>
          ))}
        </ul>
      </FitText>
      <div className={styles.acts}>
        {takes && (
          // biome-ignore lint/a11y/noAutofocus: the sheet was asked for to be taken, by Enter too
          <button type="button" className={styles.take} onClick={take} autoFocus>
            take these times
          </button>
        )}
        <button type="button" onClick={onClose}>
          {takes ? "leave it" : "close"}
        </button>
      </div>
    </section>
  );
}
