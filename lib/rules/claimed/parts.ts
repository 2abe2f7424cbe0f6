/** Whether it is the last or the first move, block, round, side or repetition. */
import { cycleSeconds } from "#lib/clock/clock.ts";
import { tenth } from "#lib/numbers/round.ts";
import { countWord, moveName } from "#lib/plan/format.ts";
import { isPartOf } from "#lib/talk/claims/spoken-names.ts";
import type { PartClaim } from "#lib/talk/claims/types.ts";
import { type ClaimedCase, type Contradiction, counted, earlierOf, inBlock, laterOf, sidesDiffer } from "./case.ts";

const NEAR_END_CYCLES = 2;
const NEAR_END_SECONDS = 15;

const isOfThis = ({ ctx, placed }: ClaimedCase, { named }: PartClaim): boolean =>
  named === undefined || isPartOf(named, moveName(ctx.plan, placed.item));

export function notLast(c: ClaimedCase, claim: PartClaim): Contradiction {
  if (!isOfThis(c, claim)) return undefined;
  switch (claim.what) {
    case "side":
      return notLastSide(c);
    case "round": {
      const rounds = laterOf(c).filter(({ item }) => item.side === c.placed.item.side).length;
      return rounds > 0 ? counted(rounds, "more round of it follows", "more rounds of it follow") : undefined;
    }
    case "block": {
      const blocks = blocksWithMoves(c, 1);
      return blocks > 0 ? counted(blocks, "more block follows", "more blocks follow") : undefined;
    }
    default:
      return notLastMove(c, claim);
  }
}

const notLastSide = (c: ClaimedCase): Contradiction =>
  laterOf(c).some((other) => sidesDiffer(c.placed, other)) &&
  !earlierOf(c).some((other) => sidesDiffer(c.placed, other))
    ? "the other side follows"
    : undefined;

function notLastMove(c: ClaimedCase, claim: PartClaim): Contradiction {
  const { ctx, placed, cue, n } = c;
  const later = ctx.moves.slice(n + 1);
  const moreMoves = counted(later.length, "move follows", "moves follow");
  if (claim.of === "class") return later.length > 0 ? moreMoves : undefined;
  const block = inBlock(c, 1);
  const onlyOtherSide = block.every((other) => other.item.move === placed.item.move);
  if (block.length === 0 || (onlyOtherSide && claim.what === "move")) return undefined;
  if (claim.what === "move") return moreMoves;
  const cycle = (placed.move && cycleSeconds(placed.move)) ?? 0;
  const left = cue ? placed.row.end - cue.to : 0;
  if (left <= Math.max(NEAR_END_SECONDS, NEAR_END_CYCLES * cycle)) return undefined;
  return `the move goes on for ${tenth(left)} s, and ${moreMoves}`;
}

export function notFirst(c: ClaimedCase, claim: PartClaim): Contradiction {
  const before = earlierOf(c);
  const last = before.at(-1);
  if (claim.what === "side")
    return last && sidesDiffer(last, c.placed) && before.length % 2 === 1 ? "the other side came first" : undefined;
  if (claim.what === "round") {
    const same = before.filter(({ item }) => item.side === c.placed.item.side).length;
    return same > 0 ? `it is round ${countWord(same + 1)}` : undefined;
  }
  if (claim.what === "block") {
    const blocks = blocksWithMoves(c, -1);
    return blocks > 0 ? counted(blocks, "block comes before it", "blocks come before it") : undefined;
  }
  const isFirst =
    claim.of === "class" ? c.n === 0 : inBlock(c, -1).every(({ item }) => item.move === c.placed.item.move);
  return isFirst ? undefined : counted(c.n, "move comes before it", "moves come before it");
}

/** Blocks after (or before) this one that have a move. */
function blocksWithMoves({ ctx, placed }: ClaimedCase, towards: 1 | -1): number {
  let blocks = 0;
  let isNew = false;
  for (let at = placed.index; ctx.plan.items[at] !== undefined; at += towards) {
    const kind = ctx.plan.items[at]?.kind;
    if (kind === "heading") isNew = true;
    if (kind === "move" && isNew) [blocks, isNew] = [blocks + 1, false];
  }
  return blocks;
}
