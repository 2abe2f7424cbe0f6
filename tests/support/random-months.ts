/**
 * Random months for property tests, all valid by the month file's contract. Values come from short lists, so that bounds
 * are met exactly, plans tie and classes overlap as often as not.
 */
import fc from "fast-check";
import {
  COACH_ROLES,
  type FillWanted,
  type KnownPlan,
  MONTH_FORMAT,
  type MonthCoach,
  type MonthFile,
  type MonthPlan,
  type MonthSlot,
  type PatternLine,
  type SlotValues,
} from "#lib/month/types.ts";
import type { Group } from "#lib/plan/schema.ts";

const ROOMS = ["hall", "loft"];
const COACHES = ["ines", "rui", "zoe"];
const REGULARS = ["early", "late", "noon"];
const THEMES = ["arms", "legs"];
const PLAN_IDS = ["a", "b", "c", "d", "e"];
/** Zones whose clocks change in spring 2026, by one hour, by half of one, or never; with wall times that are skipped or come twice. */
const CLOCKS: Readonly<Record<string, readonly (readonly [date: string, start: string])[]>> = {
  "Europe/Lisbon": [["2026-03-29", "01:30"]],
  "America/New_York": [["2026-03-08", "02:15"]],
  "Australia/Lord_Howe": [["2026-04-05", "01:45"]],
  "Asia/Kolkata": [],
  "America/Santiago": [["2026-04-04", "23:30"]],
};
const RULES = ["no-plan", "no-room", "too-alike", "short-recovery", "room-clash", "on-a-holiday", "little-variety"];

const oneOf = <T>(...values: T[]): fc.Arbitrary<T> => fc.constantFrom(...values);
const some = <T>(values: readonly T[], minLength = 0, maxLength = values.length): fc.Arbitrary<T[]> =>
  fc.shuffledSubarray([...values], { minLength, maxLength });
/** Without the keys that were left undefined. */
function given<T extends object>(value: T): T {
  return Object.fromEntries(Object.entries(value).filter(([, v]) => v !== undefined)) as T;
}
/** Left out once in `freq`. */
const maybe = <T>(value: fc.Arbitrary<T>, freq = 2): fc.Arbitrary<T | undefined> =>
  fc.option(value, { nil: undefined, freq });
const maybeNull = <T>(value: fc.Arbitrary<T>): fc.Arbitrary<T | null | undefined> =>
  fc.oneof({ weight: 6, arbitrary: value }, { weight: 1, arbitrary: oneOf(null, undefined) });

const dateAfter = (date: string, days: number): string =>
  new Date(Date.parse(`${date}T00:00:00Z`) + days * 86_400_000).toISOString().slice(0, 10);
const dateFrom = (date: string, least: number, most: number): fc.Arbitrary<string> =>
  fc.integer({ min: least, max: most }).map((days) => dateAfter(date, days));

const seconds = oneOf(0, 12.5, 29.9, 30, 60, 100, 150, 200, 240, 300, 300.00000000001, 333.3, 450, 600);
const perGroup: fc.Arbitrary<Partial<Record<Group, number>>> = fc.dictionary(
  oneOf<Group>("chest", "glutes", "abdominals", "biceps", "upper-back"),
  seconds,
  { maxKeys: 4, noNullPrototype: true },
);
const moveIds = Array.from({ length: 14 }, (_, i) => `move-${i}`);

const knownPlan: fc.Arbitrary<KnownPlan> = fc.record({
  title: oneOf("Arms", "Trunk", "Legs; long"),
  seconds: oneOf(1500, 2700, 2700.00000000001, 3000, 3000.5, 3300),
  signed: oneOf(true, true, true, false),
  equipment: oneOf("twin-rail", "twin-rail", "twin-rail", "tower"),
  groups: perGroup,
  moves: fc.dictionary(oneOf(...moveIds), seconds, { maxKeys: 10, noNullPrototype: true }),
  push: seconds,
  pull: seconds,
  metMinutes: oneOf(0, 120.25, 150, 180.75),
  talkSeconds: oneOf(0, 600, 1800, 2700.1),
});
const monthPlan: fc.Arbitrary<MonthPlan> = fc.oneof(
  { weight: 8, arbitrary: knownPlan },
  { weight: 1, arbitrary: fc.constant<MonthPlan>({ title: "Someone's own", known: false }) },
);

const time = oneOf(
  "00:30",
  "01:30",
  "02:15",
  "02:30",
  "06:00",
  "07:00",
  "07:45",
  "12:00",
  "18:00",
  "18:50",
  "19:00",
  "23:30",
);
const slotValues: fc.Arbitrary<SlotValues> = fc
  .record({
    start: time,
    minutes: oneOf(5, 45, 50, 55, 60, 120),
    room: maybeNull(oneOf(...ROOMS)),
    coach: maybeNull(oneOf(...COACHES)),
    regulars: maybe(some(REGULARS, 1, 2), 8),
    theme: maybe(oneOf(...THEMES, null)),
    plan: maybeNull(oneOf(...PLAN_IDS)),
    people: maybe(oneOf(0, 7, 8, 9)),
    locked: maybe(fc.boolean()),
    note: oneOf(undefined, undefined, "Bring towels"),
  })
  .map(given);

const coach = (from: string): fc.Arbitrary<MonthCoach> =>
  fc
    .record({
      name: oneOf("Inês", "Rui"),
      roles: some(COACH_ROLES, 0, 3),
      free: maybe(
        fc.array(
          fc.record({
            days: some([1, 2, 3, 4, 5, 6, 7], 1),
            from: oneOf("00:00", "06:00", "07:00"),
            to: oneOf("19:00", "24:00"),
          }),
          { maxLength: 2 },
        ),
      ),
      away: maybe(
        fc
          .tuple(dateFrom(from, -3, 20), fc.integer({ min: 0, max: 5 }))
          .map(([date, days]) => [{ from: date, to: dateAfter(date, days) }]),
      ),
    })
    .map(given);

const line = (from: string, index: number): fc.Arbitrary<PatternLine> =>
  fc
    .tuple(
      slotValues,
      fc.record({
        days: some([1, 2, 3, 4, 5, 6, 7], 1, 3),
        rhythm: fc.oneof(
          fc.record({ every: maybe(fc.integer({ min: 1, max: 4 })), weekStart: maybe(oneOf(1, 7)) }),
          fc.record({ nth: some([-5, -2, -1, 1, 2, 3, 4, 5], 1, 4) }),
        ),
        from: maybe(dateFrom(from, -120, 12)),
        to: maybe(dateFrom(from, 0, 40)),
        count: maybe(fc.integer({ min: 1, max: 12 })),
        except: maybe(fc.uniqueArray(dateFrom(from, 0, 20), { maxLength: 4 })),
      }),
    )
    .map(([values, { rhythm, from: begun, to, ...rest }]) => {
      // The rule's own dates in order, whichever way they were drawn.
      const ends =
        begun !== undefined && to !== undefined && to < begun ? { from: to, to: begun } : { from: begun, to };
      return given({ ...values, ...rest, ...given(rhythm), ...ends, id: `line-${index}` }) as PatternLine;
    });

/** A date of the month; more often one of its first days, so that classes meet. */
const dateIn = (first: string, days: number): fc.Arbitrary<string> =>
  fc.oneof(dateFrom(first, 0, days), dateFrom(first, 0, Math.min(days, 9)));

/** Single slots, and some that stand in place of what a line gives (or would give). */
const slots = (first: string, days: number, most: number): fc.Arbitrary<MonthSlot[]> =>
  fc
    .array(
      fc.record({
        values: slotValues,
        date: dateIn(first, days),
        instead: maybe(fc.tuple(oneOf(0, 1), dateIn(first, days)), 4),
        out: oneOf(true, false, undefined, undefined, undefined, undefined),
      }),
      { minLength: Math.ceil(most / 2), maxLength: most, size: "max" },
    )
    .map((drawn) => {
      const made = drawn.map(({ values, date, instead, out }, i): MonthSlot => {
        const id = instead ? `line-${instead[0]}-${instead[1].replaceAll("-", "")}` : `s${i}`;
        return given({ ...values, id, date, out }) as MonthSlot;
      });
      return made.filter((slot, i) => made.findIndex(({ id }) => id === slot.id) === i);
    });

const theme = fc
  .record({
    name: oneOf("Arms", "Legs"),
    promised: maybe(fc.integer({ min: 0, max: 5 })),
    shares: maybe(
      fc.dictionary(oneOf<Group>("chest", "glutes"), oneOf(0, 0.25, 0.3, 0.5), { maxKeys: 2, noNullPrototype: true }),
    ),
  })
  .map(given);

const limits = fc
  .record({
    heavySeconds: maybe(oneOf(60, 300, 450)),
    heavyBy: maybe(fc.constant({ chest: 200, glutes: 100.5 })),
    recoveryHours: maybe(oneOf(24, 48, 72)),
    recoveryBy: maybe(fc.constant({ chest: 36 })),
    likeMost: maybe(oneOf(0, 0.3, 0.5, 1)),
    riseMost: maybe(oneOf(0, 0.5)),
    varietyLeast: maybe(oneOf(3, 8)),
    coachMinutesDay: maybe(oneOf(60, 105)),
    coachTalkSecondsDay: maybe(oneOf(600, 2400)),
    gapMinutes: maybe(oneOf(0, 10, 50)),
    restHours: maybe(oneOf(8, 12)),
  })
  .map(given);

const weights = fc
  .record({
    must: maybe(oneOf(0, 50)),
    look: maybe(oneOf(1, 20)),
    info: maybe(oneOf(0, 3)),
    likeness: maybe(oneOf(0, 1, 40)),
    wish: maybe(oneOf(0, 12)),
  })
  .map(given);

const standards = fc.dictionary(
  oneOf(...RULES),
  oneOf("must", "look", "info", "off").map((level) => ({ level }) as const),
  { maxKeys: 3, noNullPrototype: true },
);

const byIds = <T>(ids: readonly string[], value: fc.Arbitrary<T>): fc.Arbitrary<Record<string, T>> =>
  fc.tuple(...ids.map(() => value)).map((values) => Object.fromEntries(ids.map((id, i) => [id, values[i] as T])));

interface Size {
  readonly days: number;
  readonly slots: number;
  readonly lines: number;
}

/** Moves the first slot to where the zone's clock changes, when that is in the month. */
function atChange(month: MonthFile): MonthFile {
  const { dates } = month;
  const [date, start] = CLOCKS[month.zone]?.find(([d]) => d >= dates.from && d <= dates.to) ?? [];
  const slots = month.slots.map((slot, i) => (i === 0 && date && start ? { ...slot, date, start } : slot));
  return { ...month, slots };
}

/** What the sums and findings of a month need, without a wish to fill it. */
function monthOf(size: Size, plan: fc.Arbitrary<MonthPlan>): fc.Arbitrary<MonthFile> {
  return dateFrom("2026-03-01", 0, 60).chain((from) =>
    fc.tuple(fc.integer({ min: 0, max: size.days }), maybe(fc.integer({ min: 0, max: 14 }))).chain(([days, before]) => {
      const known = before === undefined ? undefined : dateAfter(from, -before);
      const first = known ?? from;
      const length = days + (before ?? 0);
      return fc
        .record({
          format: fc.constant(MONTH_FORMAT),
          title: fc.constant("March"),
          studio: fc.constant({ uid: "5f0c2f3e-8d0b-4a4e-9b1a-3c8f1f2d7a10", name: "Tidewater" }),
          zone: oneOf(...Object.keys(CLOCKS)),
          changedAt: fc.constant("2026-02-20T10:00:00Z"),
          dates: fc.constant(given({ from, to: dateAfter(from, days), known })),
          asOf: maybe(dateFrom(from, -2, Math.ceil(days / 2))),
          holidays: maybe(
            fc.dictionary(dateFrom(from, -1, days), fc.constant("Holiday"), { maxKeys: 2, noNullPrototype: true }),
          ),
          rooms: byIds(
            ROOMS,
            fc.record({ name: fc.constant("Hall"), machines: oneOf(7, 8), equipment: oneOf("twin-rail", "tower") }),
          ),
          coaches: byIds(COACHES, coach(from)),
          regulars: byIds(
            REGULARS,
            fc.record({ name: fc.constant("Early birds"), people: maybe(oneOf(3, 4, 8)) }).map(given),
          ),
          themes: byIds(THEMES, theme),
          plans: byIds(PLAN_IDS, plan),
          pattern: size.lines === 0 ? fc.constant(undefined) : maybe(fc.tuple(line(from, 0), line(from, 1)), 3),
          slots: slots(first, length, size.slots),
          limits: maybe(limits),
          standards: maybe(standards),
          weights: maybe(weights),
        })
        .map((month) => atChange(given(month) as MonthFile));
    }),
  );
}

/** Up to four weeks with a weekly pattern. */
export const randomMonth: fc.Arbitrary<MonthFile> = fc.noBias(monthOf({ days: 27, slots: 16, lines: 2 }, monthPlan));

/** Plans that may mostly be put in. */
const fillPlan = fc.oneof(
  {
    weight: 4,
    arbitrary: knownPlan.map((plan): MonthPlan => ({ ...plan, signed: true, seconds: Math.min(plan.seconds, 2700) })),
  },
  { weight: 1, arbitrary: monthPlan },
);

const anySmallFill: fc.Arbitrary<MonthFile> = monthOf({ days: 6, slots: 9, lines: 0 }, fillPlan).chain((month) => {
  const free = month.slots.filter(({ locked }) => !locked).map(({ id }) => id);
  return some(free, Math.min(3, free.length), Math.min(6, free.length)).chain((emptied) => {
    const slots = month.slots.map((slot) => (emptied.includes(slot.id) ? { ...slot, plan: null } : slot));
    const open = slots.filter(({ plan, locked, out }) => !plan && !locked && !out).map(({ id }) => id);
    return wanted({ ...month, slots }, open).map((fill) => ({ ...month, slots, fill }));
  });
});

const wanted = (month: MonthFile, open: readonly string[]): fc.Arbitrary<FillWanted> =>
  fc
    .record({
      slots: some(open, Math.min(2, open.length), Math.min(4, open.length)),
      plans: some(PLAN_IDS, 2, 4),
      wishes: maybe(
        fc.array(
          fc
            .record({
              slot: oneOf(...month.slots.map(({ id }) => id)),
              plan: oneOf(...PLAN_IDS),
              weight: maybe(oneOf(0, 7, 30)),
            })
            .map(given),
          { maxLength: 3 },
        ),
      ),
      mostUses: maybe(fc.integer({ min: 1, max: 3 })),
    })
    .map((fill) => given(fill) as FillWanted);

/** A few days, with at most four slots to fill from at most four plans: small enough to try every choice. */
export const smallFill: fc.Arbitrary<MonthFile> = fc.noBias(anySmallFill);
