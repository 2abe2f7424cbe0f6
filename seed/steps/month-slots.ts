/** A month of the programme in both rooms: a weekly pattern, with the gaps and clashes of a real month. */
import { daysOfMonth, isoWeekday } from "#lib/calendar/days.ts";
import type { Slot } from "#lib/programme/layout.ts";
import type { PersonKey } from "#seed/studio/people.ts";
import type { SeedRoom } from "#seed/studio/rooms.ts";

export type PlanKey = "upper" | "whole" | "first";
export interface MonthPeople {
  readonly people: Readonly<Record<PersonKey, string>>;
  readonly rooms: Readonly<Record<SeedRoom["key"], string>>;
  readonly plans: Readonly<Record<PlanKey, string>>;
}

interface Weekly {
  /** ISO weekday, 1 Monday. */
  readonly day: number;
  readonly time: string;
  readonly minutes: number;
  readonly theme: string;
  readonly coach: PersonKey | null;
  readonly room: SeedRoom["key"];
  readonly plan: PlanKey | null;
  /** Only on the n-th such weekday of the month; every week when left out. */
  readonly week?: number;
  readonly note?: string;
}

const WEEK: readonly Weekly[] = [
  { day: 1, time: "07:00", minutes: 30, theme: "Upper body and trunk", coach: "marta", room: "harbour", plan: "upper" },
  { day: 1, time: "18:00", minutes: 50, theme: "Whole body", coach: "ines", room: "loft", plan: "whole" },
  { day: 2, time: "12:15", minutes: 30, theme: "Upper body and trunk", coach: "marta", room: "harbour", plan: "upper" },
  { day: 3, time: "07:00", minutes: 50, theme: "Whole body", coach: "marta", room: "loft", plan: "whole" },
  { day: 3, time: "18:30", minutes: 30, theme: "Arms and chest", coach: "jonas", room: "harbour", plan: "first" },
  { day: 4, time: "18:00", minutes: 50, theme: "Whole body", coach: "marta", room: "loft", plan: "whole" },
  { day: 5, time: "07:00", minutes: 30, theme: "Upper body and trunk", coach: "ines", room: "harbour", plan: "upper" },
  { day: 5, time: "17:30", minutes: 45, theme: "Legs and balance", coach: "ines", room: "loft", plan: null },
  { day: 6, time: "09:30", minutes: 50, theme: "Whole body", coach: "marta", room: "loft", plan: "whole" },
  // Problems that a real month has: a coach with two classes at once, a room used twice, a plan too long, no coach.
  { day: 2, time: "12:30", minutes: 45, theme: "Legs and balance", coach: "marta", room: "loft", plan: null, week: 2 },
  { day: 4, time: "18:30", minutes: 30, theme: "Trunk", coach: "ines", room: "loft", plan: null, week: 3 },
  { day: 6, time: "11:00", minutes: 40, theme: "Whole body", coach: "ines", room: "loft", plan: "whole", week: 4 },
  {
    day: 6,
    time: "09:30",
    minutes: 45,
    theme: "Open day",
    coach: null,
    room: "harbour",
    plan: null,
    week: 4,
    note: "Short tasters for visitors. Who can teach it?",
  },
];

/** The slots of `month` ('YYYY-MM'), by date; the ids are stable, so that seeding again changes nothing. */
export function monthSlots(month: string, known: MonthPeople): Slot[] {
  const { people, rooms, plans } = known;
  const seen = new Map<number, number>();
  return daysOfMonth(month).flatMap((date) => {
    const day = isoWeekday(date);
    const nth = (seen.get(day) ?? 0) + 1;
    seen.set(day, nth);
    return WEEK.filter((slot) => slot.day === day && (slot.week ?? nth) === nth).map((slot) => ({
      id: `slot-${date}-${slot.room}-${slot.time.replace(":", "")}`,
      date,
      time: slot.time,
      minutes: slot.minutes,
      theme: slot.theme,
      coachId: slot.coach && people[slot.coach],
      roomId: rooms[slot.room],
      planId: slot.plan && plans[slot.plan],
      note: slot.note ?? "",
    }));
  });
}
