/** Springs as coils, as many as there are, the line as thick as the spring is stiff among its neighbours; words beside. */
import type { SpringCount } from "#lib/cues/springs.ts";
import type { Equipment } from "#lib/plan/schema.ts";
import styles from "./floor-coils.module.css";

const THIN = 1.3;
const THICK = 4;

function weightOf(spring: SpringCount, equipment: Equipment): number {
  const all = equipment.springs.map((s) => s.stiffnessNPerMm);
  const [low, high] = [Math.min(...all), Math.max(...all)];
  if (!(high > low)) return (THIN + THICK) / 2;
  return THIN + ((THICK - THIN) * (spring.stiffnessNPerMm - low)) / (high - low);
}

/** Decoration for the words that stand beside it: hidden from readers. `1em` high. */
export function FloorCoils({ springs, equipment }: { springs: readonly SpringCount[]; equipment: Equipment }) {
  return (
    <span className={styles.coils} aria-hidden="true">
      {springs.flatMap((spring) =>
        Array.from({ length: spring.count }, (_, n) => `${spring.id}-${n}`).map((key) => (
          <svg key={key} viewBox="0 0 46 28" className={styles.coil} strokeWidth={weightOf(spring, equipment)}>
            <title>{spring.label}</title>
            <path d="M2 17 H7 C10 17 10 5 13 5 S16 23 19 23 S22 5 25 5 S28 23 31 23 S34 5 37 5 S38 17 41 17 H44" />
          </svg>
        )),
      )}
    </span>
  );
}
