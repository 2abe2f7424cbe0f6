/** The window of a plate: the body on the machine, on the ground of its pattern, whose word stands in it. */
import type { ReactNode } from "react";
import type { Move } from "#lib/plan/schema.ts";
import styles from "./plate.module.css";
import { tintOf } from "./tint.ts";

interface PlateWindowProps {
  readonly move: Move | undefined;
  /** The figure, drawn as its page draws figures: at once on paper, after the page on a screen. */
  readonly figure: ReactNode;
  /** The number of the move, where a page refers to moves by number. */
  readonly number?: number | undefined;
  /** What else there is room for. */
  readonly children?: ReactNode;
}

/** Decoration beside the plate's words. */
export function PlateWindow({ move, figure, number, children }: PlateWindowProps) {
  return (
    <span className={styles.window} data-ground={tintOf(move)} aria-hidden="true">
      {move && <span className={styles.figure}>{figure}</span>}
      <span className={styles.label}>
        {number !== undefined && <span>{number}</span>}
        <span>{move?.pattern ?? "not known"}</span>
      </span>
      {children}
    </span>
  );
}
