/** Whether the breath goes the way that the move has it. */
import { own } from "#lib/plan/lookup.ts";
import type { BreathClaim } from "#lib/talk/claims/types.ts";
import type { ClaimedCase, Contradiction } from "./case.ts";

export function otherBreath({ ctx, placed }: ClaimedCase, { breath, during }: BreathClaim): Contradiction {
  const move = placed.move ?? own(ctx.plan.moves, placed.item.move);
  if (!move?.exhaleOn || "holdSeconds" in move.tempo) return undefined;
  const isByPattern = during === "push" || during === "pull";
  if (isByPattern && move.pattern !== during) return undefined;
  const half = isByPattern ? "out" : during;
  if ((breath === "out") === (half === move.exhaleOn)) return undefined;
  return `the breath out goes with the way ${move.exhaleOn}`;
}
