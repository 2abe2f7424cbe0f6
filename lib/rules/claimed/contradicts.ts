/**
 * Compares a claim of the script with the plan at the moment at which it is said. A claim counts as true if any reading of
 * it is: "two minutes left" may be of the move or of the class, "last one" the last repetition or the last move.
 */
import type { Claim } from "#lib/talk/claims/types.ts";
import type { RuleContext } from "../define/types.ts";
import type { SaidLine } from "../select/said-lines.ts";
import { otherBreath } from "./breath.ts";
import type { ClaimedCase, Contradiction } from "./case.ts";
import { otherFollowing, otherReps, otherRounds } from "./counts.ts";
import { otherNext } from "./next.ts";
import { notFirst, notLast } from "./parts.ts";
import { otherSide } from "./side.ts";
import { otherSprings } from "./springs.ts";
import { notHalfway, type Tolerance, timeDiffers } from "./time.ts";

export function contradiction(ctx: RuleContext, line: SaidLine, claim: Claim, tolerance: Tolerance): Contradiction {
  const at: ClaimedCase = { ...line, ctx, n: ctx.moves.indexOf(line.placed) };
  switch (claim.says) {
    case "time":
      return timeDiffers(at, claim, tolerance);
    case "halfway":
      return notHalfway(at, claim);
    case "last":
      return notLast(at, claim);
    case "first":
      return notFirst(at, claim);
    case "side":
      return otherSide(at, claim);
    case "next":
      return otherNext(at, claim);
    case "springs":
      return otherSprings(at, claim);
    case "rounds":
      return otherRounds(at, claim);
    case "following":
      return otherFollowing(at, claim);
    case "reps":
      return otherReps(at, claim);
    case "breath":
      return otherBreath(at, claim);
  }
}
