/** How long an item may be, how long it is now and how long it would be. Decoration: the numbers are beside it. */
import styles from "./fit.module.css";
import type { TimeRow } from "./preview.ts";

const WIDTH = 96;
const HEIGHT = 18;
const MIDDLE = HEIGHT / 2;
const EDGE = 5;

export function BoundsBar({ row, longest }: { readonly row: TimeRow; readonly longest: number }) {
  const x = (seconds: number) => EDGE + (Math.max(0, Math.min(seconds, longest)) / longest) * (WIDTH - 2 * EDGE);
  const [low, high] = row.locked ? [row.from, row.from] : row.bounds;
  return (
    <svg className={styles.bar} width={WIDTH} height={HEIGHT} viewBox={`0 0 ${WIDTH} ${HEIGHT}`} aria-hidden="true">
      <line x1={EDGE} x2={WIDTH - EDGE} y1={MIDDLE} y2={MIDDLE} className={styles.barGround} />
      <line x1={x(low)} x2={x(high)} y1={MIDDLE} y2={MIDDLE} className={styles.barRange} />
      <circle cx={x(row.from)} cy={MIDDLE} r={3.5} className={styles.barNow} />
      {row.to !== row.from && <circle cx={x(row.to)} cy={MIDDLE} r={4} className={styles.barThen} />}
    </svg>
  );
}
