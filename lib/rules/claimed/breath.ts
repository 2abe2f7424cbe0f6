/** Whether the breath goes the way that the move has it. */
import { own } from "#lib/plan/lookup.ts";
import type { Move } from "#lib/plan/schema.ts";
import type { BreathClaim } from "#lib/talk/claims/types.ts";
import type { ClaimedCase, Contradiction } from "./case.ts";
import { halfOfMotion } from "./halves.ts";

export function otherBreath({ ctx, placed }: ClaimedCase, { breath, during }: BreathClaim): Contradiction {
  const move: Move | undefined = placed.move ?? own(ctx.plan.moves, placed.item.move);
  if (!move?.exhaleOn || "holdSeconds" in move.tempo || isTaughtBothWays(move)) return undefined;
  const half = halfOfMotion(move, during);
  if (half === undefined || (breath === "out") === (half === move.exhaleOn)) return undefined;
  return `the breath out goes with the way ${move.exhaleOn}`;
}

/**
 * Lifting the chest face down is breathed in by many teachers, since that opens the ribs, and out by as many, since it is
 * the effort. Common practice, no source.
 */
const isTaughtBothWays = ({ pattern, position }: Move): boolean => pattern === "extension" && position === "prone";
