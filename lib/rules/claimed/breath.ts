/** Whether the breath goes the way that the move has it. */
import { own } from "#lib/plan/lookup.ts";
import type { Move } from "#lib/plan/schema.ts";
import type { BreathClaim } from "#lib/talk/claims/types.ts";
import type { ClaimedCase, Contradiction } from "./case.ts";
import { halfOfMotion } from "./halves.ts";

export function otherBreath({ ctx, placed }: ClaimedCase, { breath, during }: BreathClaim): Contradiction {
  const move: Move | undefined = placed.move ?? own(ctx.plan.moves, placed.item.move);
  if (!move?.exhaleOn || "holdSeconds" in move.tempo) return undefined;
  const half = halfOfMotion(move, during);
  if (half === undefined || (breath === "out") === (half === move.exhaleOn)) return undefined;
  return `the breath out goes with the way ${move.exhaleOn}`;
}
