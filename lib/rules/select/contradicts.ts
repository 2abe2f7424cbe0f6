/**
 * Compares a claim of the script with the plan. A claim counts as true if any reading of it is: "two minutes left" may be
 * of the move or of the class, "last one" the last repetition or the last move.
 */

import { cycleSeconds } from "#lib/clock/clock.ts";
import { tenth } from "#lib/numbers/round.ts";
import { agree, countWord, moveName, sideWords, springWords } from "#lib/plan/format.ts";
import { own } from "#lib/plan/lookup.ts";
import type { Claim } from "#lib/talk/claims.ts";
import type { PlacedMove, RuleContext } from "../define/types.ts";
import type { SaidLine } from "./said-lines.ts";

export interface Tolerance {
  readonly toleranceSeconds: number;
  readonly toleranceShare: number;
}
type PartClaim = Extract<Claim, { readonly what: unknown }>;
/** What the plan says instead, to follow "but ..."; undefined when the claim is true. */
export type Contradiction = string | undefined;

interface Case extends SaidLine {
  readonly ctx: RuleContext;
  /** Place among the moves of the class, from 0. */
  readonly n: number;
}

export function contradiction(ctx: RuleContext, line: SaidLine, claim: Claim, tolerance: Tolerance): Contradiction {
  const at: Case = { ...line, ctx, n: ctx.moves.indexOf(line.placed) };
  switch (claim.says) {
    case "time":
      return timeDiffers(at, claim, tolerance);
    case "halfway":
      return notHalfway(at);
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
  }
}

const MINUTE_IS_ROUND = 30;

/** Compares with the seconds left of the move and of the class while the line is said. */
function timeDiffers({ ctx, placed, cue }: Case, claim: Claim & { says: "time" }, t: Tolerance): Contradiction {
  if (!cue) return undefined;
  const slack = Math.max(
    claim.unit === "minutes" ? MINUTE_IS_ROUND : 0,
    t.toleranceSeconds,
    claim.seconds * t.toleranceShare,
  );
  const { start, end } = placed.row;
  const isNear = (left: number): boolean => Math.abs(left - claim.seconds) <= slack + (cue.to - cue.from);
  const ofMove = Math.min(end - cue.from, end - start);
  const lasts = [ofMove, ctx.total - cue.from, (ctx.rows.at(-1)?.end ?? 0) - cue.from];
  if (lasts.some(isNear)) return undefined;
  return `the move goes on for ${tenth(ofMove)} s`;
}

const HALF_FROM = 0.33;
const HALF_TO = 0.67;
function notHalfway({ ctx, placed, cue }: Case): Contradiction {
  if (!cue) return undefined;
  const { start, end } = placed.row;
  const isHalf = (share: number): boolean => share >= HALF_FROM && share <= HALF_TO;
  const ofMove = (at: number): number => (end > start ? (at - start) / (end - start) : 0);
  if ([cue.from, cue.to].some((at) => isHalf(ofMove(at)) || isHalf(at / Math.max(1, ctx.total)))) return undefined;
  return ofMove(cue.from) < 0.5 ? "the move has hardly begun" : "the move is nearly over";
}

const movesOf = (ctx: RuleContext, { item }: PlacedMove): PlacedMove[] =>
  ctx.moves.filter((other) => other.item.move === item.move);
const isOneSided = ({ item }: PlacedMove): boolean => item.side === "left" || item.side === "right";
const sidesDiffer = (a: PlacedMove, b: PlacedMove): boolean =>
  isOneSided(a) && isOneSided(b) && a.item.side !== b.item.side;
const counted = (n: number, one: string, many = `${one}s`): string => `${countWord(n)} ${agree(n, one, many)}`;

/** Moves after (or before) this one in its block. */
function inBlock({ ctx, placed }: Case, towards: 1 | -1): PlacedMove[] {
  const { items } = ctx.plan;
  let edge = placed.index;
  while (items[edge] !== undefined && items[edge]?.kind !== "heading") edge += towards;
  const [from, to] = towards > 0 ? [placed.index, edge] : [edge, placed.index];
  return ctx.moves.filter(({ index }) => index > from && index < to);
}

const NEAR_END_CYCLES = 2;
const NEAR_END_SECONDS = 15;
function notLast(c: Case, claim: PartClaim): Contradiction {
  const { ctx, placed, cue, n } = c;
  const later = ctx.moves.slice(n + 1);
  const sameLater = later.filter(({ item }) => item.move === placed.item.move);
  const moreMoves = counted(later.length, "move follows", "moves follow");
  if (claim.what === "side") {
    return sameLater.some((other) => sidesDiffer(placed, other)) &&
      !earlier(c).some((other) => sidesDiffer(placed, other))
      ? "the other side follows"
      : undefined;
  }
  if (claim.what === "round") {
    const rounds = sameLater.filter(({ item }) => item.side === placed.item.side).length;
    return rounds > 0 ? counted(rounds, "more round of it follows", "more rounds of it follow") : undefined;
  }
  if (claim.of === "class") return later.length > 0 ? moreMoves : undefined;
  const block = inBlock(c, 1);
  const onlyOtherSide = block.every((other) => other.item.move === placed.item.move);
  if (block.length === 0 || (onlyOtherSide && claim.what === "move")) return undefined;
  if (claim.what === "one") {
    const cycle = (placed.move && cycleSeconds(placed.move)) ?? 0;
    const left = cue ? placed.row.end - cue.to : 0;
    if (left <= Math.max(NEAR_END_SECONDS, NEAR_END_CYCLES * cycle)) return undefined;
    return `the move goes on for ${tenth(left)} s, and ${moreMoves}`;
  }
  return moreMoves;
}

const earlier = ({ ctx, placed, n }: Case): PlacedMove[] =>
  ctx.moves.slice(0, n).filter(({ item }) => item.move === placed.item.move);

function notFirst(c: Case, claim: PartClaim): Contradiction {
  const before = earlier(c);
  const last = before.at(-1);
  if (claim.what === "side")
    return last && sidesDiffer(last, c.placed) && before.length % 2 === 1 ? "the other side came first" : undefined;
  if (claim.what === "round") {
    const same = before.filter(({ item }) => item.side === c.placed.item.side).length;
    return same > 0 ? `it is round ${countWord(same + 1)}` : undefined;
  }
  const isFirst =
    claim.of === "class" ? c.n === 0 : inBlock(c, -1).every(({ item }) => item.move === c.placed.item.move);
  return isFirst ? undefined : counted(c.n, "move comes before it", "moves come before it");
}

function otherSide(c: Case, claim: Claim & { says: "side" }): Contradiction {
  const { ctx, placed, n } = c;
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

const wordsOf = (name: string): string[] =>
  name
    .toLowerCase()
    .split(/[^a-z0-9]+/)
    .filter((word) => word.length > 2);
const names = (name: string, said: readonly string[]): boolean => {
  const words = wordsOf(name);
  return said.length > 0 && said.every((word) => words.some((w) => w === word || `${w}s` === word || w === `${word}s`));
};

/** Only the name of another move of the plan can be wrong: "water is next" is not about a move. */
function otherNext({ ctx, n, placed }: Case, claim: Claim & { says: "next" }): Contradiction {
  const said = wordsOf(claim.name);
  const next = ctx.moves[n + 1];
  if (next && names(moveName(ctx.plan, next.item), said)) return undefined;
  // In a set-up line, the next move may be the one being set up.
  if (names(moveName(ctx.plan, placed.item), said)) return undefined;
  if (!ctx.moves.some(({ item }) => names(moveName(ctx.plan, item), said))) return undefined;
  return next ? `the next move is ${moveName(ctx.plan, next.item)}` : "nothing follows";
}

function otherSprings({ ctx, placed, line }: Case, claim: Claim & { says: "springs" }): Contradiction {
  // An easier or harder way may use other springs.
  if (line.kind === "easier" || line.kind === "harder") return undefined;
  if (!claim.sure && line.kind !== "setup" && line.kind !== "start") return undefined;
  const { equipment } = ctx.plan;
  const label = claim.label.replace(/^(?:of the|the) /, "").trim();
  const spring = equipment.springs.find((s) => [s.label.toLowerCase(), `${s.label.toLowerCase()}s`].includes(label));
  if (!spring && (label !== "" || !claim.sure)) return undefined;
  const sum = Object.values(placed.item.springs).reduce((a, b) => a + b, 0);
  const really = spring ? (own(placed.item.springs, spring.id) ?? 0) : sum;
  return really === claim.count ? undefined : `the plan has ${springWords(equipment, placed.item.springs)}`;
}

function otherRounds({ ctx, placed, n }: Case, claim: Claim & { says: "rounds" }): Contradiction {
  const same = ctx.moves.filter(({ item }) => item.move === placed.item.move && item.side === placed.item.side);
  const nth = same.findIndex((other) => ctx.moves.indexOf(other) === n) + 1;
  const either = movesOf(ctx, placed).length;
  if (claim.nth)
    return same.length < 2 && claim.count === 1
      ? undefined
      : nth === claim.count
        ? undefined
        : `it is round ${countWord(nth)}`;
  return same.length === claim.count || either === claim.count
    ? undefined
    : `the plan has ${counted(same.length, "round")} of it`;
}
