/**
 * Two sides of one measure as bars that grow away from a middle line: left against right, push against pull. What is
 * uneven looks uneven and says so; every bar has its number, shown or read aloud.
 */
import styles from "./balance.module.css";

export interface MirrorRow {
  readonly key: string;
  readonly label: string;
  /** Seconds. */
  readonly left: number;
  readonly right: number;
  /** The numbers in words, as they are read aloud and, where there is room, seen: "60 s". */
  readonly leftWords: string;
  readonly rightWords: string;
  /** Where each side would end if the promise were exactly kept, in the unit of `left`. */
  readonly wanted?: number | undefined;
  /** A number at the end of the row. */
  readonly share?: string;
  /** What is wrong with it, or what was promised, in words. */
  readonly note?: string;
  readonly uneven: boolean;
  readonly missed?: boolean;
}

interface MirrorBarsProps {
  readonly rows: readonly MirrorRow[];
  /** What is compared, for people who do not see the bars: "Left against right, weighted seconds". */
  readonly caption: string;
  /** `narrow`: bars without visible numbers, for a place of a few lines. */
  readonly narrow?: boolean;
  /** Words over the two sides. */
  readonly heads?: readonly [string, string];
}

export function MirrorBars({ rows, caption, narrow = false, heads }: MirrorBarsProps) {
  const longest = Math.max(1, ...rows.flatMap(({ left, right, wanted = 0 }) => [left, right, narrow ? 0 : wanted]));
  if (rows.length === 0) return null;
  return (
    <figure className={styles.bars} data-narrow={narrow || undefined}>
      <figcaption className="visually-hidden">{caption}</figcaption>
      <ul>
        {heads && (
          <li className={styles.heads} aria-hidden="true">
            <span>{heads[0]}</span>
            <span>{heads[1]}</span>
          </li>
        )}
        {rows.map((row) => (
          <Row key={row.key} row={row} longest={longest} narrow={narrow} />
        ))}
      </ul>
    </figure>
  );
}

function Row({ row, longest, narrow }: { row: MirrorRow; longest: number; narrow: boolean }) {
  const at = (value: number) => `${(value / longest) * 100}%`;
  const wanted = row.wanted === undefined ? null : at(row.wanted);
  return (
    <li data-uneven={row.uneven || undefined} data-missed={row.missed || undefined}>
      <span className={styles.label}>{row.label}</span>
      <span className="visually-hidden">
        {`: left ${row.leftWords}, right ${row.rightWords}${row.uneven ? ", uneven" : ""}`}
      </span>
      {!narrow && (
        <span className={styles.number} aria-hidden="true">
          {row.leftWords}
        </span>
      )}
      <span className={styles.left} aria-hidden="true">
        <span className={styles.bar} style={{ width: at(row.left) }} />
        {wanted !== null && !narrow && <span className={styles.wanted} style={{ right: wanted }} />}
      </span>
      <span className={styles.right} aria-hidden="true">
        <span className={styles.bar} style={{ width: at(row.right) }} />
        {wanted !== null && !narrow && <span className={styles.wanted} style={{ left: wanted }} />}
      </span>
      {!narrow && (
        <>
          <span className={styles.number} aria-hidden="true">
            {row.rightWords}
          </span>
          <span className={styles.share}>{row.share}</span>
          {row.note && <span className={styles.note}>{row.note}</span>}
        </>
      )}
    </li>
  );
}
