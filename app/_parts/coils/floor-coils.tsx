/** The coils of the floor and of paper: larger than on a page, and as high as the letters beside them. */
import type { SpringCount } from "#lib/cues/springs.ts";
import type { Equipment } from "#lib/plan/schema.ts";
import { coilWeight } from "./coil-weight.ts";
import styles from "./floor-coils.module.css";

/** Heavier than on a page: read from across the room. */
const FLOOR_WIDTHS = [1.3, 4] as const;

interface Props {
  readonly springs: readonly SpringCount[];
  readonly equipment: Equipment;
  /** Taken off: each is struck through. */
  readonly struck?: boolean;
}

/** Decoration beside the words, hidden from screen readers. `1em` high. */
export function FloorCoils({ springs, equipment, struck = false }: Props) {
  return (
    <span className={styles.coils} aria-hidden="true">
      {springs.flatMap((spring) =>
        Array.from({ length: spring.count }, (_, n) => `${spring.id}-${n}`).map((key) => (
          <svg
            key={key}
            viewBox="0 0 46 28"
            className={styles.coil}
            strokeWidth={coilWeight(spring, equipment.springs, FLOOR_WIDTHS)}
          >
            <title>{spring.label}</title>
            <path d="M2 17 H7 C10 17 10 5 13 5 S16 23 19 23 S22 5 25 5 S28 23 31 23 S34 5 37 5 S38 17 41 17 H44" />
            {struck && <path d="M3 27 L43 2" strokeWidth="3" />}
          </svg>
        )),
      )}
    </span>
  );
}
