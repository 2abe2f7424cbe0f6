/** Move items that ask for care, and whether the words for it were said. */
import { MOVE_CAUTIONS, type MoveCaution } from "#lib/plan/schema.ts";
import type { PlacedMove, RuleContext } from "../types.ts";
import { says } from "./cues.ts";

export interface CautionedMove {
  readonly placed: PlacedMove;
  /** Tags of the move that count here, in the order of MOVE_CAUTIONS. */
  readonly tags: readonly MoveCaution[];
  readonly saysSafety: boolean;
  readonly saysEasier: boolean;
}

/** Items whose move carries one of `which`. */
export function cautionedMoves(ctx: RuleContext, which: readonly MoveCaution[]): CautionedMove[] {
  return ctx.moves.flatMap((placed) => {
    const cautions = placed.move?.cautions ?? [];
    const tags = MOVE_CAUTIONS.filter((tag) => cautions.includes(tag) && which.includes(tag));
    if (tags.length === 0) return [];
    return [{ placed, tags, saysSafety: says(placed.item, "safety"), saysEasier: says(placed.item, "easier") }];
  });
}
