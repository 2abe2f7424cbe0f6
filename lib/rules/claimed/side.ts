/** Whether it is the side that is said. */
import { sideWords } from "#lib/plan/format.ts";
import type { SideClaim } from "#lib/talk/claims/types.ts";
import { type ClaimedCase, type Contradiction, isOneSided, sidesDiffer } from "./case.ts";

export function otherSide({ ctx, placed, n }: ClaimedCase, claim: SideClaim): Contradiction {
  const next = ctx.moves[n + 1];
  if (claim.then) {
    if (claim.side === "other") return next && sidesDiffer(placed, next) ? undefined : "no other side follows";
    return next && isOneSided(next) && next.item.side !== claim.side
      ? `${sideWords(next.item.side)} is next`
      : undefined;
  }
  // Lying on the left, the right side works; an item of both sides changes sides within it.
  if (!isOneSided(placed) || placed.move?.position === "side-lying") return undefined;
  if (claim.side !== "other")
    return claim.side === placed.item.side ? undefined : `the plan has the ${placed.item.side} side`;
  const around = [...ctx.moves.slice(0, n), ...(next ? [next] : [])];
  return around.some((other) => sidesDiffer(placed, other)) ? undefined : "no other side was done before it";
}
