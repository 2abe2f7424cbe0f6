/** A line with a claim, at its place in the class. */
import { agree, countWord } from "#lib/plan/format.ts";
import type { PlacedMove, RuleContext } from "../define/types.ts";
import type { SaidLine } from "../select/said-lines.ts";

export interface ClaimedCase extends SaidLine {
  readonly ctx: RuleContext;
  /** Place among the moves of the class, from 0. */
  readonly n: number;
}

/** What the plan says instead, to follow "but ..."; undefined when the claim is true. */
export type Contradiction = string | undefined;

export const movesOf = ({ ctx, placed }: ClaimedCase): PlacedMove[] =>
  ctx.moves.filter((other) => other.item.move === placed.item.move);
export const earlierOf = ({ ctx, placed, n }: ClaimedCase): PlacedMove[] =>
  ctx.moves.slice(0, n).filter(({ item }) => item.move === placed.item.move);
export const laterOf = ({ ctx, placed, n }: ClaimedCase): PlacedMove[] =>
  ctx.moves.slice(n + 1).filter(({ item }) => item.move === placed.item.move);

export const isOneSided = ({ item }: PlacedMove): boolean => item.side === "left" || item.side === "right";
export const sidesDiffer = (a: PlacedMove, b: PlacedMove): boolean =>
  isOneSided(a) && isOneSided(b) && a.item.side !== b.item.side;

export const counted = (n: number, one: string, many = `${one}s`): string => `${countWord(n)} ${agree(n, one, many)}`;

/** Moves after (or before) this one in its block. */
export function inBlock({ ctx, placed }: ClaimedCase, towards: 1 | -1): PlacedMove[] {
  const { items } = ctx.plan;
  let edge = placed.index;
  while (items[edge] !== undefined && items[edge]?.kind !== "heading") edge += towards;
  const [from, to] = towards > 0 ? [placed.index, edge] : [edge, placed.index];
  return ctx.moves.filter(({ index }) => index > from && index < to);
}

/** Before the start people are told of the move to come, so a claim may be about the move or about what follows it. */
export const isBeforeStart = ({ line }: ClaimedCase): boolean => line.kind === "setup" || line.kind === "safety";
