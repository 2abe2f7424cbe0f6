/** What the better order saves: seconds, and set-up actions by kind. */
import type { ReactNode } from "react";
import styles from "./order.module.css";
import { kindRows, movesAndSecondsWords, savedWords } from "./order-words.ts";
import type { OrderPreview } from "./preview.ts";

interface SavingsProps {
  readonly preview: OrderPreview;
  /** What else to know before taking it. */
  readonly children: ReactNode;
}

export function OrderSavings({ preview, children }: SavingsProps) {
  const rows = kindRows(preview.order);
  return (
    <div className={styles.saved}>
      <div className={styles.verdict}>
        <p className={styles.great}>{savedWords(preview.order)}</p>
        <p>{movesAndSecondsWords(preview)}</p>
        {children}
      </div>
      <table className={styles.kinds}>
        <caption className="visually-hidden">Set-up actions by kind</caption>
        <thead>
          <tr>
            <th scope="col">Set-up actions</th>
            <th scope="col" className="number">
              now
            </th>
            <th scope="col" className="number">
              then
            </th>
          </tr>
        </thead>
        <tbody>
          {rows.map(({ words, before, after }) => (
            <tr key={words} data-changes={before !== after || undefined} data-more={after > before || undefined}>
              <th scope="row">
                {words}
                {after > before && <span className={styles.more}> more</span>}
              </th>
              <td className="number">{before}</td>
              <td className="number">{after}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
