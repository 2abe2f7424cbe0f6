/** A second reading of the findings of single slots, rooms and coaches. */
import { limitsOfMonth, type MonthCoach, type MonthFile } from "#lib/month/types.ts";
import type { ReadSlot } from "./reading-slots.ts";
import { minutesOf, slotsOfCoach, talkOf } from "./reading-sums.ts";
import { dayOfWeek } from "./reading-time.ts";
import { datesOf, moreThan, onDate, pairsInOrder, planOf, shortShares, slotsOn, total } from "./reading-work.ts";

export interface ReadFinding {
  readonly id: string;
  readonly rule: string;
  readonly slots: readonly ReadSlot[];
  readonly values: Record<string, unknown>;
}
export const told = (
  rule: string,
  id: string,
  slots: readonly ReadSlot[],
  values: Record<string, unknown> = {},
): ReadFinding => ({ id: `${rule}:${id}`, rule, slots, values });

const pairId = (a: ReadSlot, b: ReadSlot): string => `${a.id}+${b.id}`;

export function clashes(month: MonthFile): ReadFinding[] {
  const found: ReadFinding[] = [];
  const slots = slotsOn(month);
  for (const [i, a] of slots.entries()) {
    for (const b of slots.slice(i + 1)) {
      const minutes = (Math.min(a.to, b.to) - Math.max(a.from, b.from)) / 60_000;
      if (minutes <= 0) continue;
      const { room, coach } = a.slot;
      if (room && b.slot.room === room) found.push(told("room-clash", `${room}:${pairId(a, b)}`, [a, b], { minutes }));
      if (coach && b.slot.coach === coach) {
        found.push(told("coach-clash", `${coach}:${pairId(a, b)}`, [a, b], { minutes }));
      }
    }
  }
  return found;
}

export function ofSlot(month: MonthFile, s: ReadSlot): ReadFinding[] {
  const found: ReadFinding[] = [];
  const say = (rule: string, values: Record<string, unknown> = {}) => found.push(told(rule, s.id, [s], values));
  const { room, coach, plan, theme, people, regulars } = s.slot;
  const there = room ? month.rooms[room] : undefined;
  const coming = people ?? total((regulars ?? []).map((id) => month.regulars[id]?.people ?? 0));
  if (there && coming > there.machines) say("more-people-than-machines", { people: coming, machines: there.machines });
  if (!room) say("no-room");
  if (!coach) say("no-coach");
  if (!plan) say("no-plan");
  if (s.shown === "skipped") say("time-skipped");
  if (s.shown === "twice") say("time-twice");
  if (Object.hasOwn(month.holidays ?? {}, s.date)) say("on-a-holiday");
  const person = coach ? month.coaches[coach] : undefined;
  if (person && !person.roles.some((role) => role === "coach" || role === "lead")) say("coach-role");
  const why = person ? awayOf(person, s) : undefined;
  if (why !== undefined) say("coach-away", { why });
  const known = planOf(month, s);
  if (plan && known === undefined) say("plan-unknown");
  if (known === undefined) return found;
  if (!known.signed) say("unsigned-plan");
  if (there && known.equipment !== there.equipment) {
    say("other-equipment", { plan: known.equipment, room: there.equipment });
  }
  const over = known.seconds - 60 * s.slot.minutes;
  if (moreThan(over, 0)) say("plan-too-long", { seconds: over });
  const short = theme ? shortShares(month, theme, known) : {};
  if (Object.keys(short).length > 0) say("theme-not-kept", { short });
  return found;
}

function awayOf(coach: MonthCoach, { date, slot }: ReadSlot): string | undefined {
  if ((coach.away ?? []).some(({ from, to }) => from <= date && date <= to)) return "away";
  if (coach.free === undefined) return undefined;
  const minute = (time: string): number => Number(time.slice(0, 2)) * 60 + Number(time.slice(3));
  const start = minute(slot.start);
  const fits = coach.free.some(({ days, from, to }) => {
    return days.includes(dayOfWeek(date)) && minute(from) <= start && start + slot.minutes <= minute(to);
  });
  return fits ? undefined : "hours";
}

export function ofCoach(month: MonthFile, id: string): ReadFinding[] {
  const limits = limitsOfMonth(month);
  const found: ReadFinding[] = [];
  const slots = slotsOfCoach(month, id);
  for (const date of datesOf(slots)) {
    const day = onDate(slots, date);
    const [minutes, seconds] = [minutesOf(day), talkOf(month, day)];
    if (moreThan(minutes, limits.coachMinutesDay))
      found.push(told("coach-long-day", `${id}:${date}`, day, { minutes }));
    if (moreThan(seconds, limits.coachTalkSecondsDay)) {
      found.push(told("coach-talks-long", `${id}:${date}`, day, { seconds }));
    }
  }
  for (const [a, b] of pairsInOrder(slots)) {
    const minutes = (b.from - a.to) / 60_000;
    if (minutes < 0) continue;
    const least = a.date === b.date ? limits.gapMinutes : 60 * limits.restHours;
    const rule = a.date === b.date ? "coach-gap-short" : "coach-rest-short";
    if (moreThan(least, minutes)) found.push(told(rule, `${id}:${pairId(a, b)}`, [a, b], { minutes }));
  }
  return found;
}
