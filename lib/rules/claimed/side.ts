/** Whether it is the side that is said. */
import { sideWords } from "#lib/plan/format.ts";
import type { SideClaim } from "#lib/talk/claims/types.ts";
import { type ClaimedCase, type Contradiction, isOneSided, sidesDiffer } from "./case.ts";

export function otherSide({ ctx, placed, n, cue }: ClaimedCase, claim: SideClaim): Contradiction {
  const next = ctx.moves[n + 1];
  if (claim.then) {
    if (claim.side === "other") return next && sidesDiffer(placed, next) ? undefined : "no other side follows";
    if (next && isOneSided(next))
      return next.item.side === claim.side ? undefined : `${sideWords(next.item.side)} is next`;
    return isOneSided(placed) && placed.item.side !== claim.side ? `no ${claim.side} side follows` : undefined;
  }
  // Lying on the left, the right side works; an item of both sides changes sides within it.
  if (!isOneSided(placed) || placed.move?.position === "side-lying") return undefined;
  if (claim.side !== "other")
    return claim.side === placed.item.side ? undefined : `the plan has the ${placed.item.side} side`;
  // Near the end it is the side to come.
  const isLate = !cue || cue.to > (placed.row.start + placed.row.end) / 2;
  const around = [...ctx.moves.slice(0, n), ...(next && isLate ? [next] : [])];
  return around.some((other) => sidesDiffer(placed, other)) ? undefined : "no other side was done before it";
}
