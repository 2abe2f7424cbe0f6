/** The muscles of a move on a person, prime movers darkest. */
import { BodyMap } from "#app/_body-map/body-map.tsx";
import type { Move } from "#lib/plan/schema.ts";
import styles from "./move.module.css";

export function MoveMuscles({ move: { muscles } }: { readonly move: Move }) {
  if (!Object.values(muscles).some((weight) => weight > 0)) return null;
  return (
    <div className={styles.muscles}>
      <BodyMap
        shares={muscles}
        layout="standing"
        of="weight"
        title="Front and back of a person, shaded by how much each muscle does in the move"
      />
    </div>
  );
}
