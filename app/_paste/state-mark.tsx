/** Whether a row is ready, in doubt or skipped: a shape and its word, never a colour alone. */
import type { JudgedRow } from "#lib/paste/judged.ts";
import styles from "./paste.module.css";

const WORDS: Readonly<Record<JudgedRow["state"], string>> = { ready: "ready", doubt: "doubt", skipped: "skipped" };

export function StateMark({ state }: { state: JudgedRow["state"] }) {
  return (
    <span className={styles.state} data-of={state}>
      <svg
        width="18"
        height="18"
        viewBox="0 0 18 18"
        aria-hidden="true"
        fill="none"
        stroke="currentColor"
        strokeWidth="1.8"
      >
        {state === "ready" && (
          <>
            <circle cx="9" cy="9" r="7.5" fill="currentColor" />
            <path d="M5.5 9.2 L8 11.7 L12.6 6.6" stroke="var(--raised)" />
          </>
        )}
        {state === "doubt" && (
          <>
            <path d="M9 1.2 L16.8 9 L9 16.8 L1.2 9 Z" />
            <path d="M9 5.2 V9.8 M9 11.6 V13.2" />
          </>
        )}
        {state === "skipped" && <path d="M2.5 9 H15.5" strokeDasharray="3 2.5" />}
      </svg>
      {WORDS[state]}
    </span>
  );
}
