/** Planned and real times, one item a row, with a bar for each so that a long one catches the eye. */
import type { TaughtRow } from "#lib/floor/taught-class.ts";
import { plainNumber } from "#lib/plan/format.ts";
import styles from "./classes.module.css";

export function TaughtTable({ rows }: { readonly rows: readonly TaughtRow[] }) {
  const longest = Math.max(1, ...rows.flatMap(({ own }) => [own.planned, own.took]));
  return (
    <table className={styles.table}>
      <thead>
        <tr>
          <th scope="col">Item</th>
          <th scope="col" className={styles.figure}>
            Change
          </th>
          <th scope="col" className={styles.figure}>
            Work, planned
          </th>
          <th scope="col" className={styles.figure}>
            Work, actual
          </th>
          <th scope="col" className={styles.bars}>
            Work: planned above, actual below
          </th>
          <th scope="col">Change, work and holds together</th>
        </tr>
      </thead>
      <tbody>
        {rows.map((row) => (
          <tr key={row.key}>
            <th scope="row">{row.name}</th>
            <td className={styles.figure}>{changeWords(row.change)}</td>
            <td className={styles.figure}>{plainNumber(row.own.planned)} s</td>
            <td className={styles.figure}>{plainNumber(row.own.took)} s</td>
            <td className={styles.bars} aria-hidden="true">
              <span className={styles.planned} style={{ width: `${(100 * row.own.planned) / longest}%` }} />
              <span className={styles.took} style={{ width: `${(100 * row.own.took) / longest}%` }} />
            </td>
            <td>{differs(row)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

const changeWords = ({ planned, took }: TaughtRow["change"]): string =>
  planned === 0 && took === 0
    ? ""
    : Math.round(planned) === Math.round(took)
      ? `${Math.round(took)} s`
      : `${Math.round(took)} s, planned ${Math.round(planned)} s`;

function differs({ leftOut, held, over }: TaughtRow): string {
  if (leftOut) return "left out";
  const by = Math.round(over);
  const parts = [
    ...(by > 0 ? [`${by} s over`] : by < 0 ? [`${-by} s under`] : []),
    ...(held >= 0.5 ? [`held ${Math.round(held)} s`] : []),
  ];
  return parts.join(", ");
}
