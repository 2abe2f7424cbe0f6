/** A second reading of `month fill`, by trying every choice in the order of candidates and keeping the first of the cheapest. */
import { FILL_WEIGHTS, type MonthFile, type MonthSlot } from "#lib/month/types.ts";
import { readCheck } from "./reading-check.ts";
import { codeOrder, type ReadSlot, readSlots } from "./reading-slots.ts";
import { inMonth, likenessOf, moreThan, pairsInOrder, planOf, slotsOfRegulars, slotsOn } from "./reading-work.ts";

type Choice = readonly (string | null)[];

export function toFill(month: MonthFile): ReadSlot[] {
  const { asOf, dates, fill } = month;
  const since = asOf !== undefined && asOf > dates.from ? asOf : dates.from;
  return slotsOn(month).filter(({ id, date, slot }) => {
    return (
      !slot.plan && slot.locked !== true && date >= since && (fill?.slots === undefined || fill.slots.includes(id))
    );
  });
}

export function candidatesOf(month: MonthFile, { slot }: ReadSlot): (string | null)[] {
  const ids = month.fill?.plans ?? Object.keys(month.plans);
  const fitting = [...ids].sort(codeOrder).filter((id) => {
    const plan = month.plans[id];
    if (plan === undefined || plan.known === false || !plan.signed) return false;
    if (slot.room && month.rooms[slot.room]?.equipment !== plan.equipment) return false;
    return !moreThan(plan.seconds, 60 * slot.minutes);
  });
  return [...fitting, null];
}

export function withChoice(month: MonthFile, slots: readonly ReadSlot[], choice: Choice): MonthFile {
  const chosen = new Map(slots.map(({ id }, i) => [id, choice[i] ?? null]));
  const all = readSlots(month).map(({ slot, id }): MonthSlot => {
    const plan = chosen.get(id);
    return plan ? { ...slot, plan } : slot;
  });
  // Every slot stands for itself, so the pattern has nothing left to give.
  const { pattern: _, ...rest } = month;
  return { ...rest, slots: all };
}

/** In ten-thousandths. */
export function costOf(month: MonthFile, slots: readonly ReadSlot[], choice: Choice): number {
  const weights = { ...FILL_WEIGHTS, ...month.weights };
  const filled = withChoice(month, slots, choice);
  let whole = 0;
  for (const { level } of readCheck(filled)) whole += weights[level];
  for (const wish of month.fill?.wishes ?? []) {
    const at = slots.findIndex(({ id }) => id === wish.slot);
    if (at >= 0 && choice[at] !== wish.plan) whole += wish.weight ?? weights.wish;
  }
  let likeness = 0;
  for (const id of Object.keys(month.regulars)) {
    for (const [a, b] of pairsInOrder(slotsOfRegulars(filled, id))) {
      const alike = likenessOf(planOf(filled, a), planOf(filled, b));
      if (alike !== null) likeness += Math.floor(10_000 * alike + 0.5);
    }
  }
  return 10_000 * whole + weights.likeness * likeness;
}

/** No plan that is put in stands too often. */
export function isAllowed(month: MonthFile, slots: readonly ReadSlot[], choice: Choice): boolean {
  const most = month.fill?.mostUses;
  if (most === undefined) return true;
  const standing = slotsOn(withChoice(month, slots, choice)).filter((slot) => inMonth(month, slot));
  return choice.every((plan) => plan === null || standing.filter(({ slot }) => slot.plan === plan).length <= most);
}

export function allChoices(candidates: readonly (readonly (string | null)[])[]): Choice[] {
  const [first, ...rest] = candidates;
  if (first === undefined) return [[]];
  const after = allChoices(rest);
  return first.flatMap((plan) => after.map((choice) => [plan, ...choice]));
}

export interface ReadFill {
  readonly before: number;
  readonly after: number;
  readonly slots: { slot: string; plan: string | null; others: { plan: string | null; cost: number }[] }[];
  readonly gone: string[];
  readonly new: string[];
}

export function readFill(month: MonthFile): ReadFill {
  const slots = toFill(month);
  const candidates = slots.map((slot) => candidatesOf(month, slot));
  const empty = slots.map(() => null);
  let best: { choice: Choice; cost: number } = { choice: empty, cost: Number.POSITIVE_INFINITY };
  for (const choice of allChoices(candidates)) {
    if (!isAllowed(month, slots, choice)) continue;
    const cost = costOf(month, slots, choice);
    if (cost < best.cost) best = { choice, cost };
  }
  const ids = (choice: Choice): string[] => readCheck(withChoice(month, slots, choice)).map(({ id }) => id);
  const [was, is] = [ids(empty), ids(best.choice)];
  return {
    before: costOf(month, slots, empty) / 10_000,
    after: best.cost / 10_000,
    slots: slots.map(({ id }, i) => {
      return {
        slot: id,
        plan: best.choice[i] ?? null,
        others: othersOf(month, slots, best.choice, i, candidates[i] ?? []),
      };
    }),
    gone: was.filter((id) => !is.includes(id)).sort(codeOrder),
    new: is.filter((id) => !was.includes(id)).sort(codeOrder),
  };
}

function othersOf(month: MonthFile, slots: readonly ReadSlot[], best: Choice, at: number, plans: Choice) {
  return plans
    .filter((plan) => plan !== best[at])
    .map((plan) => ({ plan, choice: best.map((chosen, i) => (i === at ? plan : chosen)) }))
    .filter(({ choice }) => isAllowed(month, slots, choice))
    .map(({ plan, choice }) => ({ plan, cost: costOf(month, slots, choice) / 10_000 }))
    .map((other, order) => ({ other, order }))
    .sort((a, b) => a.other.cost - b.other.cost || a.order - b.order)
    .slice(0, 3)
    .map(({ other }) => other);
}
