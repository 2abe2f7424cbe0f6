import { isoWeekday, minuteOfDay } from "#lib/calendar/days.ts";
import { defineMonthRule, OWN_FACTS } from "../define/define-month-rule.ts";
import { oneClass } from "../define/one-class.ts";
import { startWords } from "../define/words.ts";
import type { MonthClass } from "../sums-types.ts";
import type { FreeTime, MonthCoach } from "../types.ts";

export const coachAway = defineMonthRule({
  id: "coach-away",
  of: "slot",
  title: "A coach is not there at the time of a class",
  why: "The class has nobody to give it.",
  fix: "Choose another coach, or ask this one.",
  level: "must",
  source: OWN_FACTS,
  limits: [],
  check({ one, coach }) {
    const why = coach && whyNot(coach, one);
    return why ? [oneClass(one, { why })] : [];
  },
  say: ({ values: { why } }, { one, coach }) =>
    why === "away"
      ? `${startWords(one)}: ${coach?.name} is away on that day. Choose another coach.`
      : `${startWords(one)} to ${one.till} is outside the hours of ${coach?.name}. Choose another coach, or ask.`,
});

function whyNot({ free, away = [] }: MonthCoach, { slot }: MonthClass): "away" | "hours" | undefined {
  if (away.some(({ from, to }) => from <= slot.date && slot.date <= to)) return "away";
  const from = minuteOfDay(slot.start);
  const day = isoWeekday(slot.date);
  const fits = (time: FreeTime): boolean =>
    time.days.includes(day) && minuteOfDay(time.from) <= from && from + slot.minutes <= endMinute(time.to);
  return free && !free.some(fits) ? "hours" : undefined;
}

const endMinute = (time: string): number => (time === "24:00" ? DAY_MINUTES : minuteOfDay(time));

const DAY_MINUTES = 1440;
