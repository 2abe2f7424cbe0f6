"use client";
/** The lines of `told-lines.ts`, in the corner of the page. */
import { useSyncExternalStore } from "react";
import styles from "#app/_parts/overtaken-notice.module.css";
import type { ToldLine, ToldLines } from "./told-lines.ts";

const NONE: readonly ToldLine[] = [];

/** Also said in the live region of the page. */
export function tellLine(session: { readonly lines: ToldLines; say(sentence: string): void }, line: ToldLine): void {
  if (session.lines.tell(line)) session.say(line.sentence);
}

export function ToldNotices({ session }: { readonly session: { readonly lines: ToldLines } }) {
  const lines = useSyncExternalStore(session.lines.subscribe, session.lines.get, () => NONE);
  return lines.map(({ id, sentence, points = [] }) => (
    <section key={id} className={styles.notice} aria-label={sentence}>
      <p>{sentence}</p>
      {points.length > 0 && (
        <ol aria-label="What matters most">
          {points.map((point) => (
            <li key={point}>{point}</li>
          ))}
        </ol>
      )}
      <button type="button" className="button" onClick={() => session.lines.close(id)}>
        Close
      </button>
    </section>
  ));
}
