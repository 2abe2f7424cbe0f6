/** Move items that need care, and whether their script says so. */
import { type Concern, concernOf } from "#lib/cautions/concern.ts";
import type { MoveCaution } from "#lib/plan/schema.ts";
import type { PlacedMove, RuleContext } from "../define/types.ts";

export interface CautionedMove extends Concern {
  readonly placed: PlacedMove;
}

/** Items whose move carries one of `which`. */
export function cautionedMoves(ctx: RuleContext, which: readonly MoveCaution[]): CautionedMove[] {
  return ctx.moves.flatMap((placed) => {
    const concern = concernOf(placed.item, placed.move, which);
    return concern ? [{ placed, ...concern }] : [];
  });
}
