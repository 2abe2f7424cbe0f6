/** A small square with the shade of a group, beside its word. */
import type { Shade } from "#lib/body-map/shade.ts";
import styles from "./body-map.module.css";
import { hatchOf } from "./hatches.tsx";

/** The figure's own units, so that the hatch is as wide as on a figure of the usual size. */
const SIDE = 46;

export function ShadeKey({ id, shade }: { readonly id: string; readonly shade: Shade }) {
  return (
    <svg className={styles.key} viewBox={`0 0 ${SIDE} ${SIDE}`} aria-hidden="true">
      <g className={styles.region} data-shade={shade}>
        <rect x="3" y="3" width={SIDE - 6} height={SIDE - 6} className={styles.tone} />
        {shade > 0 && shade < 4 && (
          <rect x="3" y="3" width={SIDE - 6} height={SIDE - 6} fill={`url(#${hatchOf(id, shade)})`} />
        )}
      </g>
    </svg>
  );
}
