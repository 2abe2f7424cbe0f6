/** Which slots are to be filled, and with what. */

import { NOISE } from "#lib/numbers/round.ts";
import { own } from "#lib/plan/lookup.ts";
import { isKnown } from "../check/classes.ts";
import { toldFrom } from "../check/judge.ts";
import type { MonthClass } from "../sums-types.ts";
import type { KnownPlan, MonthFile } from "../types.ts";

export interface OpenSlot {
  readonly one: MonthClass;
  /** Ids of plans, sorted; last null: left empty. */
  readonly choices: readonly (string | null)[];
  /** The plan of each choice. */
  readonly plans: readonly (KnownPlan | undefined)[];
}

/** `classes`: the slots that are on, by start, then id; so are the answers. */
export function openSlots(month: MonthFile, classes: readonly MonthClass[]): OpenSlot[] {
  const since = toldFrom(month);
  const wanted = month.fill?.slots && new Set(month.fill.slots);
  const offered = [...(month.fill?.plans ?? Object.keys(month.plans))].sort(byCode).flatMap((id) => {
    const plan = own(month.plans, id);
    return plan && isKnown(plan) && plan.signed ? [{ id, plan }] : [];
  });
  return classes
    .filter(({ id, date, slot }) => !slot.plan && !slot.locked && date >= since && (wanted?.has(id) ?? true))
    .map((one) => {
      const fitting = offered.filter(({ plan }) => fits(plan, one, month));
      const choices = [...fitting.map(({ id }) => id), null];
      return { one, choices, plans: [...fitting.map(({ plan }) => plan), undefined] };
    });
}

function fits(plan: KnownPlan, { slot }: MonthClass, { rooms }: MonthFile): boolean {
  const room = slot.room ? own(rooms, slot.room) : undefined;
  return (!room || room.equipment === plan.equipment) && plan.seconds <= 60 * slot.minutes + NOISE;
}

export const byCode = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);
