/** A month to fill as a search sees it: slots, choices, parts of the cost, and how often each plan may stand. */
import { MonthAnalyst, type MonthLook } from "../check/analyst.ts";
import { ClassReader } from "../check/classes.ts";
import type { MonthClass } from "../sums-types.ts";
import type { MonthFile, MonthSlot } from "../types.ts";
import { FILL_WEIGHTS } from "../types.ts";
import { coachParts } from "./coach-parts.ts";
import { COST_UNIT } from "./fill-types.ts";
import { type OpenSlot, openSlots } from "./open-slots.ts";
import { type CostPart, costingOf, type Picks } from "./parts.ts";
import { regularsParts } from "./regulars-parts.ts";
import { slotParts } from "./slot-parts.ts";

export interface FillProblem {
  readonly open: readonly OpenSlot[];
  /** How many choices each slot has. */
  readonly sizes: readonly number[];
  /** Their product, as long as it is a safe number; else infinite. */
  readonly choices: number;
  readonly parts: readonly CostPart[];
  /** What no choice changes. The whole cost is this and the sum of the parts. */
  readonly fixed: number;
  readonly uses: Uses;
  /** What the month looks like so filled. */
  readonly look: (picks: Picks) => MonthLook;
  /** The whole cost, worked out from that. */
  readonly costOf: (picks: Picks) => number;
}

/** How often plans may still be put in. */
export interface Uses {
  /** For each slot and choice the number of the plan in `room`, or -1: as often as one likes. */
  readonly planOf: readonly (readonly number[])[];
  readonly room: readonly number[];
}

export function fillProblem(month: MonthFile): FillProblem {
  const analyst = new MonthAnalyst();
  const { classes } = new ClassReader().read(month);
  const open = openSlots(month, classes);
  const costing = costingOf(month, classes, open);
  const parts = [...slotParts(costing, open), ...coachParts(costing), ...regularsParts(costing)];
  const sizes = open.map(({ choices }) => choices.length);
  const look = (picks: Picks): MonthLook => analyst.look(withPlans(month, open, picks));
  const costOf = (picks: Picks): number => wholeCost(month, look(picks), { open, picks });
  const empty = emptyPicks(sizes);
  return {
    open,
    sizes,
    choices: product(sizes),
    parts,
    fixed: costOf(empty) - costOfParts(parts, empty),
    uses: usesOf(month, open, classes),
    look,
    costOf,
  };
}

/** Every slot left empty: the last of its choices. */
export const emptyPicks = (sizes: readonly number[]): Picks => Int32Array.from(sizes, (size) => size - 1);

export const costOfParts = (parts: readonly CostPart[], picks: Picks): number =>
  parts.reduce((sum, part) => sum + part.cost(picks), 0);

export function product(sizes: readonly number[]): number {
  const all = sizes.reduce((a, b) => a * b, 1);
  return all <= Number.MAX_SAFE_INTEGER ? all : Number.POSITIVE_INFINITY;
}

/** The month with the plans put in. A slot that the pattern gives gets an entry of its own when a plan is put in. */
export function withPlans(month: MonthFile, open: readonly OpenSlot[], picks: Picks): MonthFile {
  const chosen = new Map(open.map(({ one, choices }, i) => [one.id, choices[picks[i] ?? 0] ?? null]));
  const own = new Set(month.slots.map(({ id }) => id));
  const filled = (slot: MonthSlot): MonthSlot => {
    const plan = chosen.get(slot.id);
    return plan ? { ...slot, plan } : slot;
  };
  const added = open.flatMap(({ one }) => (chosen.get(one.id) && !own.has(one.id) ? [filled(one.slot)] : []));
  return { ...month, slots: [...month.slots.map(filled), ...added] };
}

function wholeCost(
  month: MonthFile,
  { findings, sums }: MonthLook,
  { open, picks }: { readonly open: readonly OpenSlot[]; readonly picks: Picks },
): number {
  const weights = { ...FILL_WEIGHTS, ...month.weights };
  const ofFindings = findings.reduce((sum, { level }) => sum + weights[level], 0);
  const chosen = new Map(open.map(({ one, choices }, i) => [one.id, choices[picks[i] ?? 0] ?? null]));
  const missed = (month.fill?.wishes ?? []).filter(({ slot, plan }) => chosen.has(slot) && chosen.get(slot) !== plan);
  const ofWishes = missed.reduce((sum, { weight }) => sum + (weight ?? weights.wish), 0);
  let alike = 0;
  for (const { neighbours } of Object.values(sums.regulars)) {
    for (const { likeness } of neighbours) if (likeness !== null) alike += Math.floor(COST_UNIT * likeness + 0.5);
  }
  return COST_UNIT * (ofFindings + ofWishes) + weights.likeness * alike;
}

function usesOf({ fill, dates }: MonthFile, open: readonly OpenSlot[], classes: readonly MonthClass[]): Uses {
  const most = fill?.mostUses;
  if (most === undefined) return { planOf: open.map(({ choices }) => choices.map(() => -1)), room: [] };
  const plans = [...new Set(open.flatMap(({ choices }) => choices))].filter((plan) => plan !== null);
  const counted = classes.filter(({ date }) => date >= dates.from && date <= dates.to);
  const room = plans.map((id) => Math.max(0, most - counted.filter(({ slot }) => slot.plan === id).length));
  const planOf = open.map(({ choices }) => choices.map((plan) => (plan === null ? -1 : plans.indexOf(plan))));
  return { planOf, room };
}

/** Whether no plan is put in more often than it may. */
export function isAllowed({ planOf, room }: Uses, picks: Picks): boolean {
  const left = [...room];
  for (const [i, pick] of picks.entries()) {
    const plan = planOf[i]?.[pick] ?? -1;
    if (plan < 0) continue;
    left[plan] = (left[plan] ?? 0) - 1;
    if ((left[plan] ?? 0) < 0) return false;
  }
  return true;
}
