/** What the marks of a sheet mean: a coil for each spring of the machine, and the two sides by their shape. */
import { FloorCoils } from "#app/_parts/coils/floor-coils.tsx";
import plate from "#app/_parts/plate/plate.module.css";
import type { Equipment } from "#lib/plan/schema.ts";
import styles from "./printed-class.module.css";

export function SpringKey({ equipment }: { readonly equipment: Equipment }) {
  return (
    <ul className={styles.key} aria-label="What the marks mean">
      {equipment.springs.map(({ id, label, stiffnessNPerMm }) => (
        <li key={id}>
          <FloorCoils springs={[{ id, label, stiffnessNPerMm, count: 1 }]} equipment={equipment} /> {label}
        </li>
      ))}
      {(["left", "right"] as const).map((side) => (
        <li key={side}>
          <span className={plate.side} data-side={side}>
            {side}
          </span>
        </li>
      ))}
    </ul>
  );
}
