/** A move's figure at its start and at its end; a hold has one. */
import { MoveFigurePicture } from "#app/_parts/figure.tsx";
import type { Move } from "#lib/plan/schema.ts";
import styles from "./move.module.css";

const WIDTH = 340;

export function MoveFigures({ move }: { readonly move: Move }) {
  if ("holdSeconds" in move.tempo) {
    return (
      <div className={styles.figures}>
        <MoveFigurePicture move={move} px={WIDTH} />
      </div>
    );
  }
  return (
    <div className={styles.figures}>
      {(["start", "end"] as const).map((phase) => (
        <figure key={phase}>
          <MoveFigurePicture move={move} px={WIDTH} phase={phase} ghost={false} />
          <figcaption className="quiet small">{phase}</figcaption>
        </figure>
      ))}
    </div>
  );
}
