/** Which slots are to be filled, and with what. */

import { NOISE } from "#lib/numbers/round.ts";
import { plural } from "#lib/plan/format.ts";
import { own } from "#lib/plan/lookup.ts";
import { isKnown } from "../check/classes.ts";
import { toldFrom } from "../check/judge.ts";
import type { MonthClass } from "../sums-types.ts";
import type { MonthFile, PlanFacts } from "../types.ts";

export interface OpenSlot {
  readonly one: MonthClass;
  /** Ids of plans, sorted; last null: left empty. */
  readonly choices: readonly (string | null)[];
  /** The plan of each choice. */
  readonly plans: readonly (PlanFacts | undefined)[];
}

/** `classes`: the slots that are on, by start, then id; so are the answers. */
export function openSlots(month: MonthFile, classes: readonly MonthClass[]): OpenSlot[] {
  const since = toldFrom(month);
  const wanted = month.fill?.slots && new Set(month.fill.slots);
  const offered = offeredPlans(month).filter(({ plan }) => plan.signed);
  return classes
    .filter(({ id, date, slot }) => !slot.plan && !slot.locked && date >= since && (wanted?.has(id) ?? true))
    .map((one) => {
      const fitting = offered.filter(({ plan }) => fits(plan, one, month));
      const choices = [...fitting.map(({ id }) => id), null];
      return { one, choices, plans: [...fitting.map(({ plan }) => plan), undefined] };
    });
}

/** The plans that may be put in where they fit, signed or not, by id. */
function offeredPlans(month: MonthFile): { id: string; plan: PlanFacts }[] {
  return [...(month.fill?.plans ?? Object.keys(month.plans))].sort(byCode).flatMap((id) => {
    const plan = own(month.plans, id);
    return plan && isKnown(plan) ? [{ id, plan }] : [];
  });
}

const fits = (plan: PlanFacts, one: MonthClass, month: MonthFile): boolean =>
  isForRoom(plan, one, month) && isShortEnough(plan, one);

function isForRoom({ equipment }: PlanFacts, { slot }: MonthClass, { rooms }: MonthFile): boolean {
  const room = slot.room ? own(rooms, slot.room) : undefined;
  return !room || room.equipment === equipment;
}

const isShortEnough = ({ seconds }: PlanFacts, { slot }: MonthClass): boolean => seconds <= 60 * slot.minutes + NOISE;

/** "No plan fits: 2 are not signed, 1 is for other machines, 1 is longer than 30 minutes." For a class that has no choice. */
export function whyNoPlanFits(month: MonthFile, one: MonthClass): string {
  const offered = offeredPlans(month);
  if (offered.length === 0) return "There is no plan to choose from.";
  const signed = offered.filter(({ plan }) => plan.signed);
  const right = signed.filter(({ plan }) => isForRoom(plan, one, month));
  const told = [
    reason(offered.length - signed.length, "not signed"),
    reason(signed.length - right.length, "for other machines"),
    reason(right.length, `longer than ${plural(one.slot.minutes, "minute")}`),
  ];
  return `No plan fits: ${told.filter(Boolean).join(", ")}.`;
}

const reason = (count: number, what: string): string =>
  count === 0 ? "" : `${count} ${count === 1 ? "is" : "are"} ${what}`;

export const byCode = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);
