/** The tint of a pattern. The pattern's name always stands beside it, so no meaning hangs on the colour. */
import type { Move } from "#lib/plan/schema.ts";

export type Tint = "push" | "pull" | "trunk" | "legs" | "sides" | "plain";

export function tintOf(move: Pick<Move, "pattern"> | undefined): Tint {
  switch (move?.pattern) {
    case "push":
    case "pull":
      return move.pattern;
    case "squat":
    case "hinge":
    case "lunge":
      return "legs";
    case "rotation":
    case "lateral":
      return "sides";
    case undefined:
      return "plain";
    default:
      return "trunk";
  }
}
