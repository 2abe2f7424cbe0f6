/** The slots of a month with their instants, and those that are on as classes with their plans. Reuses what did not change. */
import type { WallClock } from "#lib/calendar/zone.ts";
import { Kept, KeptEach } from "#lib/memo/kept.ts";
import { own } from "#lib/plan/lookup.ts";
import { joinSlots, occurrencesOf } from "../expand.ts";
import { byStart, clockOfMonth, type MonthWeek, timeSlot, weeksOf } from "../instants.ts";
import type { MonthClass, TimedSlot } from "../sums-types.ts";
import type { MonthFile, MonthPlan, MonthSlot, PlanFacts } from "../types.ts";

export interface MonthClasses {
  /** All of known..to, by start, then id. */
  readonly slots: readonly TimedSlot[];
  /** Those that are on. */
  readonly classes: readonly MonthClass[];
  readonly weeks: readonly MonthWeek[];
}

export class ClassReader {
  private readonly clock = new Kept<WallClock>();
  private readonly weeks = new Kept<readonly MonthWeek[]>();
  private readonly lines = new KeptEach<readonly MonthSlot[]>();
  private readonly timed = new KeptEach<TimedSlot>();
  private readonly on = new KeptEach<MonthClass>();

  read(month: MonthFile): MonthClasses {
    for (const kept of [this.lines, this.timed, this.on]) kept.round();
    const { from, to, known } = month.dates;
    const clock = this.clock.get([month.zone, from, to, known], () => clockOfMonth(month));
    const given = (month.pattern ?? []).map((line) =>
      this.lines.get(line.id, [line, from, to, month.holidays], () => occurrencesOf(line, month)),
    );
    const slots = joinSlots(month.slots, given)
      .map((slot) => this.timed.get(slot.id, [slot, clock], () => timeSlot(slot, clock)))
      .sort(byStart);
    const classes = slots.filter(({ slot }) => !slot.out).map((timed) => this.classOf(month, timed));
    return { slots, classes, weeks: this.weeks.get([from, to, known], () => weeksOf(month)) };
  }

  private classOf({ plans }: MonthFile, timed: TimedSlot): MonthClass {
    const plan = planOf(plans, timed.slot);
    return this.on.get(timed.slot.id, [timed, plan], () => asClass(timed, plan));
  }
}

const planOf = (plans: MonthFile["plans"], { plan }: MonthSlot): MonthPlan | undefined =>
  plan ? own(plans, plan) : undefined;

const asClass = (timed: TimedSlot, plan: MonthPlan | undefined): MonthClass => ({
  ...timed,
  id: timed.slot.id,
  date: timed.slot.date,
  plan: plan && isKnown(plan) ? plan : undefined,
});

export const isKnown = (plan: MonthPlan): plan is PlanFacts => plan.known !== false;

/** The class with another plan of the month, or none. */
export const classWithPlan = (one: MonthClass, plan: string | null, plans: MonthFile["plans"]): MonthClass =>
  asClass({ ...one, slot: { ...one.slot, plan } }, plan === null ? undefined : own(plans, plan));
