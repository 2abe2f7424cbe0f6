/** A month as it would be: with a class elsewhere or another plan, before anything is written. */
import { minuteOfDay } from "#lib/calendar/days.ts";
import type { MonthFile, MonthSlot } from "#lib/month/types.ts";
import { clockOfMinute } from "./time-axis.ts";

/** A class on its way: where it would be. */
export interface Moving {
  readonly slot: string;
  readonly date: string;
  readonly start: string;
}

/** The month with these classes in place of those of the same ids. */
export function withSlots(month: MonthFile, slots: readonly MonthSlot[]): MonthFile {
  if (slots.length === 0) return month;
  const instead = new Map(slots.map((slot) => [slot.id, slot]));
  const kept = month.slots.filter(({ id }) => !instead.has(id));
  return { ...month, slots: [...kept, ...slots] };
}

const DAY = 24 * 60;
const STEP = 5;

/** So many steps of five minutes later, within its day. */
export function startLater(start: string, steps: number): string {
  const minute = Math.round(minuteOfDay(start) / STEP) * STEP + steps * STEP;
  return clockOfMinute(Math.min(DAY - STEP, Math.max(0, minute)));
}
