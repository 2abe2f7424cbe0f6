"use client";
/**
 * Values of one's own that others replaced without having seen them, mostly while the network was down: one sentence, or
 * a summary with a list. It stays in the corner of the page until it is closed, so that nothing moves under a finger.
 */
import { type Overtaken, overtakenSummary } from "#lib/client/doc-session/overtaken.ts";
import styles from "./overtaken-notice.module.css";

/** A number stays on one line with its unit. */
const unbroken = (sentence: string): string => sentence.replace(/(\d) (?=(?:s|min|mm)\b)/g, "$1\u00a0");

interface OvertakenNoticeProps {
  readonly overtaken: readonly Overtaken[];
  readonly onClose: () => void;
}

export function OvertakenNotice({ overtaken, onClose }: OvertakenNoticeProps) {
  if (overtaken.length === 0) return null;
  return (
    <section className={styles.notice} aria-label="Values of yours that others replaced">
      {overtaken.length === 1 ? (
        <p>{unbroken(overtakenSummary(overtaken))}</p>
      ) : (
        <details>
          <summary>{overtakenSummary(overtaken)}</summary>
          <ul>
            {overtaken.map(({ place, sentence }) => (
              <li key={place}>{unbroken(sentence)}</li>
            ))}
          </ul>
        </details>
      )}
      <button type="button" className="button" onClick={onClose}>
        Close
      </button>
    </section>
  );
}
