"use client";
/**
 * What others set instead of one's own without having known it, mostly while the network was gone: one sentence, or a short summary with the list. It lies
 * in the corner of the page, so that nothing moves under a finger, until it is closed.
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
    <section className={styles.notice} aria-label="Set by others instead of yours">
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
