/** A month of the programme in both rooms: a pattern with exceptions, and the gaps and clashes of a real month. */
import { daysOfMonth, isoWeekday } from "#lib/calendar/days.ts";
import type { MonthSlot, MonthTheme, PatternLine, Regulars } from "#lib/month/types.ts";
import { themeIdOf } from "#lib/programme/typed-themes.ts";
import type { MonthContent } from "#lib/programme/write-content.ts";
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
  readonly theme: keyof typeof THEMES;
  readonly coach: PersonKey | null;
  readonly room: SeedRoom["key"];
  readonly plan: PlanKey | null;
  readonly regulars?: keyof typeof REGULARS;
  /** Once, on the n-th such weekday of the month; every week when left out. */
  readonly week?: number;
  readonly note?: string;
}

const REGULARS = {
  early: { name: "Early tide", people: 8 },
  evening: { name: "After work", people: 10 },
} as const satisfies Record<string, Regulars>;

const THEMES = {
  upper: { name: "Upper body and trunk", promised: 12, shares: { chest: 0.05, "upper-back": 0.05 } },
  whole: { name: "Whole body", promised: 16 },
  arms: { name: "Arms and chest", promised: 4 },
  legs: { name: "Legs and balance", promised: 4 },
  trunk: { name: "Trunk" },
  open: { name: "Open day" },
} as const satisfies Record<string, MonthTheme>;

const WEEK: readonly Weekly[] = [
  {
    day: 1,
    time: "07:00",
    minutes: 30,
    theme: "upper",
    coach: "marta",
    room: "harbour",
    plan: "upper",
    regulars: "early",
  },
  {
    day: 1,
    time: "18:00",
    minutes: 50,
    theme: "whole",
    coach: "ines",
    room: "loft",
    plan: "whole",
    regulars: "evening",
  },
  { day: 2, time: "12:15", minutes: 30, theme: "upper", coach: "marta", room: "harbour", plan: "upper" },
  {
    day: 3,
    time: "07:00",
    minutes: 50,
    theme: "whole",
    coach: "marta",
    room: "loft",
    plan: "whole",
    regulars: "early",
  },
  {
    day: 3,
    time: "18:30",
    minutes: 30,
    theme: "arms",
    coach: "jonas",
    room: "harbour",
    plan: "first",
    regulars: "evening",
  },
  {
    day: 4,
    time: "18:00",
    minutes: 50,
    theme: "whole",
    coach: "marta",
    room: "loft",
    plan: "whole",
    regulars: "evening",
  },
  {
    day: 5,
    time: "07:00",
    minutes: 30,
    theme: "upper",
    coach: "ines",
    room: "harbour",
    plan: "upper",
    regulars: "early",
  },
  { day: 5, time: "17:30", minutes: 45, theme: "legs", coach: "ines", room: "loft", plan: null },
  { day: 6, time: "09:30", minutes: 50, theme: "whole", coach: "marta", room: "loft", plan: "whole" },
  // Problems that a real month has: a coach with two classes at once, a room used twice, a plan too long, no coach.
  { day: 2, time: "12:30", minutes: 45, theme: "legs", coach: "marta", room: "loft", plan: null, week: 2 },
  { day: 4, time: "18:30", minutes: 30, theme: "trunk", coach: "ines", room: "loft", plan: null, week: 3 },
  { day: 6, time: "11:00", minutes: 40, theme: "whole", coach: "ines", room: "loft", plan: "whole", week: 4 },
  {
    ...{ day: 6, time: "09:30", minutes: 45, theme: "open", coach: null, room: "harbour", plan: null, week: 4 },
    note: "Short tasters for visitors. Who can teach it?",
  },
];

const themeId = (theme: keyof typeof THEMES): string => themeIdOf(THEMES[theme].name) ?? theme;

/** What `month` ('YYYY-MM') holds; the ids are stable, so that seeding again changes nothing. */
export function monthContent(month: string, known: MonthPeople): MonthContent {
  const lines = WEEK.filter(({ week }) => week === undefined).map((weekly) => lineOf(weekly, known));
  const once = WEEK.flatMap((weekly) => {
    const date = weekly.week === undefined ? undefined : nth(month, weekly.day, weekly.week);
    return date === undefined ? [] : [onceOf(weekly, date, known)];
  });
  return {
    ...{ regulars: REGULARS, pattern: lines },
    themes: Object.fromEntries(
      Object.entries(THEMES).map(([key, theme]) => [themeId(key as keyof typeof THEMES), theme]),
    ),
    holidays: {
      [nth(month, 7, 3) ?? `${month}-15`]: "Harbour fair",
      [nth(month, 1, 4) ?? `${month}-22`]: "Boats come in",
    },
    slots: [...once, ...exceptions(month, lines, known)],
    coachTimes: { [known.people.jonas]: { away: [{ from: `${month}-20`, to: `${month}-24`, why: "at sea" }] } },
  };
}

const idOf = ({ day, time, room }: Weekly): string =>
  `${["", "mon", "tue", "wed", "thu", "fri", "sat", "sun"][day]}-${time.replace(":", "")}-${room}`;

function valuesOf(
  { time, minutes, theme, coach, room, plan, regulars, note }: Weekly,
  { people, rooms, plans }: MonthPeople,
) {
  return {
    ...{ start: time, minutes, room: rooms[room], theme: themeId(theme) },
    ...(coach === null ? {} : { coach: people[coach] }),
    ...(plan === null ? {} : { plan: plans[plan] }),
    ...(regulars === undefined ? {} : { regulars: [regulars] }),
    ...(note === undefined ? {} : { note }),
  };
}

const lineOf = (weekly: Weekly, known: MonthPeople): PatternLine => ({
  ...{ id: idOf(weekly), days: [weekly.day] },
  ...valuesOf(weekly, known),
});

const onceOf = (weekly: Weekly, date: string, known: MonthPeople): MonthSlot => ({
  ...{ id: `once-${idOf(weekly)}`, date },
  ...valuesOf(weekly, known),
});

const nth = (month: string, day: number, n: number): string | undefined =>
  daysOfMonth(month).filter((date) => isoWeekday(date) === day)[n - 1];

/** One evening with another coach, one that begins later, one that is called off. */
function exceptions(month: string, lines: readonly PatternLine[], { people }: MonthPeople): MonthSlot[] {
  const changed = (lineId: string, day: number, week: number, change: Partial<MonthSlot>): MonthSlot[] => {
    const [line, date] = [lines.find(({ id }) => id === lineId), nth(month, day, week)];
    if (!line || date === undefined) return [];
    const { days: _, ...values } = line;
    return [{ ...values, id: `${lineId}-${date.replaceAll("-", "")}`, date, ...change }];
  };
  return [
    ...changed("wed-1830-harbour", 3, 3, { coach: people.ines, note: "Ines stands in." }),
    ...changed("mon-1800-loft", 1, 2, { start: "18:30" }),
    ...changed("fri-1730-loft", 5, 2, { out: true }),
  ];
}
