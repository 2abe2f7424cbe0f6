/** The hatches of the shades, as patterns that the figures and their key share. Units of the figure: thousandths of the stature. */
import type { Shade } from "#lib/body-map/shade.ts";
import styles from "./body-map.module.css";

/** Between two lines, and how thick they are; the more work, the closer. The strongest is solid. */
const LINES = { 1: { apart: 17, thick: 2.5 }, 2: { apart: 12, thick: 3.5 }, 3: { apart: 9, thick: 5 } } as const;
const MARK = { apart: 15, thick: 5 };

export const hatchOf = (id: string, shade: Shade | "marked"): string => `${id}-${shade}`;

export function Hatches({ id }: { readonly id: string }) {
  return (
    <svg className={styles.hatches} width="0" height="0" aria-hidden="true">
      <defs>
        {([1, 2, 3] as const).map((shade) => (
          <Hatch key={shade} id={hatchOf(id, shade)} {...LINES[shade]} turn={45} />
        ))}
        <Hatch id={hatchOf(id, "marked")} {...MARK} turn={-45} />
      </defs>
    </svg>
  );
}

interface HatchProps {
  readonly id: string;
  readonly apart: number;
  readonly thick: number;
  readonly turn: number;
}

function Hatch({ id, apart, thick, turn }: HatchProps) {
  return (
    <pattern id={id} width={apart} height={apart} patternUnits="userSpaceOnUse" patternTransform={`rotate(${turn})`}>
      <line
        y1={apart / 2}
        x2={apart}
        y2={apart / 2}
        strokeWidth={thick}
        className={turn < 0 ? styles.markLine : styles.line}
      />
    </pattern>
  );
}
