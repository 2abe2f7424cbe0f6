/** What *Fit to length* shows: every move item with its old and its new seconds, block by block, both sides together. Pure. */

import { startIfTwins } from "#app/_plan/placed-name.ts";
import { checkPlan } from "#lib/analysis/check-plan.ts";
import { classClock } from "#lib/clock/clock.ts";
import { type Fit, fitToLength, fittedPlan } from "#lib/fit/fit.ts";
import { type FitHelp, whatHelps } from "#lib/fit/help.ts";
import { boundsOf } from "#lib/fit/problem.ts";
import { headSeconds, isMoveItem, moveOf, sidePairs } from "#lib/plan/lookup.ts";
import type { ItemSide, MoveItem, Plan } from "#lib/plan/schema.ts";
import type { Finding } from "#lib/rules/define/types.ts";

/** Times in seconds. */
export interface TimeRow {
  readonly id: string;
  readonly side: ItemSide;
  /** When it starts now, where other items have its name; else null. */
  readonly at: string | null;
  readonly from: number;
  readonly to: number;
  readonly bounds: readonly [number, number];
  readonly locked: boolean;
  /** Not locked itself, but takes the time of its locked other side. */
  readonly follows: boolean;
  /** The lock of its other side takes it out of its own bounds. */
  readonly outside: boolean;
  /** Is one of those that stop the fit. */
  readonly stops: boolean;
}

/** An item, or both sides of a move, where the first of them stands. */
export interface TimeGroup {
  readonly name: string;
  readonly rows: readonly TimeRow[];
}

export interface TimeBlock {
  readonly id: string;
  /** Null above the first heading. */
  readonly title: string | null;
  readonly groups: readonly TimeGroup[];
}

export interface FitPreview {
  readonly fit: Fit;
  readonly before: number;
  readonly length: number;
  readonly closing: number;
  readonly grid: number;
  readonly blocks: readonly TimeBlock[];
  readonly helps: readonly FitHelp[];
  /** What the checks would find with these times and do not find now. */
  readonly found: readonly Finding[];
}

export function fitPreview(plan: Plan): FitPreview {
  const fit = fitToLength(plan);
  return {
    fit,
    before: classClock(plan).total,
    length: plan.lengthSeconds,
    closing: headSeconds(plan, "closingSeconds"),
    grid: headSeconds(plan, "gridSeconds"),
    blocks: blocksOf(plan, fit),
    helps: fit.possible ? [] : whatHelps(plan, fit),
    found: fit.possible ? newFindings(plan, fittedPlan(plan, fit)) : [],
  };
}

function newFindings(plan: Plan, fitted: Plan): Finding[] {
  const now = new Set(checkPlan(plan).findings.map(findingKey));
  return checkPlan(fitted).findings.filter((finding) => !now.has(findingKey(finding)));
}

const findingKey = ({ key, rule }: Finding): string => key ?? rule;

/** All rows, in the order in which they are shown. */
export const rowsOf = (preview: FitPreview): TimeRow[] =>
  preview.blocks.flatMap((block) => block.groups.flatMap((group) => group.rows));

/** Does the fit change anything at all? */
export function changesAnything({ fit, closing }: FitPreview): boolean {
  return fit.possible && (fit.changed.length > 0 || fit.closingSeconds !== closing);
}

function blocksOf(plan: Plan, fit: Fit): TimeBlock[] {
  const pairs = pairsOf(plan);
  const blocks: { id: string; title: string | null; groups: TimeGroup[] }[] = [{ id: "", title: null, groups: [] }];
  const shown = new Set<MoveItem>();
  for (const item of plan.items) {
    if (item.kind === "heading") blocks.push({ id: item.id, title: item.title, groups: [] });
    if (item.kind !== "move" || shown.has(item)) continue;
    const items = pairs.get(item) ?? [item];
    for (const one of items) shown.add(one);
    const name = moveOf(plan, item)?.name ?? (item.move === "" ? "Move not chosen yet" : item.move);
    blocks.at(-1)?.groups.push({ name, rows: items.map((one) => timeRow(plan, fit, one, items)) });
  }
  return blocks.filter((block) => block.groups.length > 0);
}

function timeRow(plan: Plan, fit: Fit, item: MoveItem, pair: readonly MoveItem[]): TimeRow {
  const change = fit.possible ? fit.changed.find((c) => c.item === item.id) : undefined;
  const locked = item.locked === true;
  return {
    id: item.id,
    side: item.side,
    at: startIfTwins(plan, item),
    from: item.seconds,
    to: change?.to ?? item.seconds,
    bounds: boundsOf(plan, item),
    locked,
    follows: !locked && pair.some((other) => other.locked === true),
    outside: fit.possible && fit.outside.includes(item.id),
    stops: !fit.possible && fit.stoppedBy.includes(item.id),
  };
}

/** Each item that has another side, with both in plan order. */
function pairsOf(plan: Plan): Map<MoveItem, readonly MoveItem[]> {
  const moves = plan.items.filter(isMoveItem);
  return new Map(
    sidePairs(plan).flatMap(({ left, right }) => {
      if (!left || !right) return [];
      const both = moves.filter((item) => item === left || item === right);
      return both.map((item): [MoveItem, readonly MoveItem[]] => [item, both]);
    }),
  );
}
