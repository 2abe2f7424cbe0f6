/** What the better order saves: seconds, and acts of setting up by kind. */
import type { ReactNode } from "react";
import { plural, secondsWords } from "#lib/plan/format.ts";
import styles from "./order.module.css";
import { kindRows, savedWords } from "./order-words.ts";
import type { OrderPreview } from "./preview.ts";

interface SavedProps {
  readonly preview: OrderPreview;
  /** What else is to be known before it is taken. */
  readonly children: ReactNode;
}

export function OrderSavings({ preview: { order, moved }, children }: SavedProps) {
  const rows = kindRows(order);
  return (
    <div className={styles.saved}>
      <div className={styles.verdict}>
        <p className={styles.great}>{savedWords(order)}</p>
        <p>{`${plural(moved.length, "item moves", "items move")}. Changes through the block, into it and out of it: ${secondsWords(order.before)} now, ${secondsWords(order.after)} then, by the estimates.`}</p>
        {children}
      </div>
      <table className={styles.kinds}>
        <caption className="visually-hidden">Acts of setting up, by kind</caption>
        <thead>
          <tr>
            <th scope="col">Set-up acts</th>
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
