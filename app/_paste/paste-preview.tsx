"use client";
/** What the list becomes, row by row, as a table; on a phone each row is a slip of its own. */
import type { PasteAnswer } from "#lib/paste/answers.ts";
import type { JudgedRow } from "#lib/paste/judged.ts";
import styles from "./paste.module.css";
import { PasteRow } from "./paste-row.tsx";
import { keepLeftOverWords, noSideWords } from "./paste-words.ts";
import type { Paste } from "./use-paste.ts";

interface PreviewProps {
  readonly paste: Paste;
  readonly answer: (keys: readonly string[], answer: PasteAnswer) => void;
}

export function PastePreview({ paste, answer }: PreviewProps) {
  const { rows, reading, context } = paste;
  if (!reading.ok || rows.length === 0) return null;
  return (
    <section className={styles.preview} aria-labelledby="paste-preview">
      <h3 id="paste-preview">What it becomes</h3>
      {reading.remarks.length > 0 && (
        <ul className={styles.remarks}>
          {reading.remarks.map((remark) => (
            <li key={remark}>{remark}</li>
          ))}
        </ul>
      )}
      <Together rows={rows} answer={answer} />
      <table className={styles.table}>
        <thead>
          <tr>
            <th scope="col">State</th>
            <th scope="col">Typed</th>
            <th scope="col">Becomes</th>
            <th scope="col">Time</th>
            <th scope="col">Springs</th>
            <th scope="col">
              <span className="visually-hidden">Actions</span>
            </th>
          </tr>
        </thead>
        {rows.map((row) => (
          <PasteRow
            key={row.reading.key}
            row={row}
            context={context}
            answer={(given) => answer([row.reading.key], given)}
          />
        ))}
      </table>
    </section>
  );
}

/** One answer for several rows with the same doubt, and for all words that are left over. */
function Together({ rows, answer }: { rows: readonly JudgedRow[]; answer: PreviewProps["answer"] }) {
  const asked = rows.filter((row) => row.doubts.some((doubt) => doubt.like === "side not named"));
  const left = rows.filter((row) => row.state !== "skipped" && row.words !== "" && !row.keepWords);
  const keysOf = (of: readonly JudgedRow[]) => of.map((row) => row.reading.key);
  const choices = asked[0]?.doubts.find((doubt) => doubt.like === "side not named")?.choices ?? [];
  if (asked.length < 2 && left.length < 2) return null;
  return (
    <div className={`light ${styles.together}`}>
      {asked.length > 1 && (
        <fieldset>
          <legend>{noSideWords(asked.length)}</legend>
          <div className={`light ${styles.choices}`}>
            {choices.map((choice) => (
              <button
                key={choice.label}
                type="button"
                className="button"
                onClick={() => answer(keysOf(asked), choice.answer)}
              >
                {choice.label}
              </button>
            ))}
          </div>
        </fieldset>
      )}
      {left.length > 1 && (
        <button type="button" className="button" onClick={() => answer(keysOf(left), { row: { keepWords: true } })}>
          {keepLeftOverWords(left.length)}
        </button>
      )}
    </div>
  );
}
