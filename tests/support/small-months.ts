/** Random month files of one calendar month, valid by the contract, small enough that every kind of content is met often. */
import fc from "fast-check";
import { dateOfDay, dayNumber } from "#lib/calendar/days.ts";
import { occurrencesOf } from "#lib/month/expand.ts";
import type { MonthFile, MonthPlan, MonthSlot, PatternLine } from "#lib/month/types.ts";
import { GROUPS } from "#lib/plan/schema.ts";

const FROM = "2026-03-01";
const TO = "2026-03-31";
const ids = (start: string, n: number) => Array.from({ length: n }, (_, i) => `${start}${i}`);
const ROOMS = ids("r", 2);
const COACHES = ids("c", 3);
const REGULARS = ids("g", 3);
const THEMES = ids("t", 2);
const PLANS = ids("p", 3);

/** Values that are undefined in half of the cases are left out, as in a file. */
const record = <T extends object>(
  shape: { readonly [K in keyof T]: fc.Arbitrary<T[K] | undefined> },
): fc.Arbitrary<T> => fc.record(shape as never).map((value) => JSON.parse(JSON.stringify(value)) as T);
const maybe = <T>(one: fc.Arbitrary<T>) => fc.option(one, { nil: undefined });
const text = fc.string({ maxLength: 8, unit: "grapheme" });
const dateIn = (from: string, to: string) =>
  fc.integer({ min: dayNumber(from), max: dayNumber(to) }).map((day) => dateOfDay(day));
const time = fc
  .tuple(fc.integer({ min: 0, max: 23 }), fc.integer({ min: 0, max: 59 }))
  .map(([h, m]) => `${String(h).padStart(2, "0")}:${String(m).padStart(2, "0")}`);
const some = <T>(list: readonly T[]) =>
  fc.subarray([...list]).chain((part) => fc.shuffledSubarray(part, { minLength: part.length }));
const reference = (list: readonly string[]) => maybe(fc.option(fc.constantFrom(...list), { nil: null }));

const values = {
  start: time,
  minutes: fc.integer({ min: 5, max: 480 }),
  room: reference(ROOMS),
  coach: reference(COACHES),
  regulars: maybe(some(REGULARS)),
  theme: reference(THEMES),
  plan: reference(PLANS),
  people: maybe(fc.integer({ min: 0, max: 500 })),
  locked: maybe(fc.boolean()),
  note: maybe(text),
};
const instant = fc
  .integer({ min: Date.UTC(2026, 0, 1) / 1000, max: Date.UTC(2026, 4, 1) / 1000 })
  .map((s) => `${new Date(s * 1000).toISOString().slice(0, 19)}Z`);
const slotOf = (id: string, from: string, to: string): fc.Arbitrary<MonthSlot> =>
  record<MonthSlot>({
    ...values,
    id: fc.constant(id),
    date: dateIn(from, to),
    out: maybe(fc.boolean()),
    changedAt: maybe(instant),
    sequence: maybe(fc.nat({ max: 9 })),
    formerCoaches: maybe(some(COACHES)),
    formerRooms: maybe(some(ROOMS)),
  });

const lineOf = (id: string): fc.Arbitrary<PatternLine> =>
  record<PatternLine>({
    ...values,
    id: fc.constant(id),
    days: fc.shuffledSubarray([1, 2, 3, 4, 5, 6, 7], { minLength: 1 }),
    every: maybe(fc.integer({ min: 1, max: 3 })),
    weekStart: maybe(fc.constantFrom(1 as const, 7 as const)),
    nth: fc.constant(undefined),
    from: maybe(dateIn("2026-01-01", "2026-03-10")),
    to: maybe(dateIn("2026-03-11", "2026-04-30")),
    count: maybe(fc.integer({ min: 1, max: 60 })),
    except: maybe(some(["2026-03-03", "2026-03-16", "2026-03-31"])),
  });
const nthLine: fc.Arbitrary<PatternLine> = lineOf("nth").chain((line) =>
  fc.shuffledSubarray([1, 2, -1, -2, 5], { minLength: 1 }).map((nth) => {
    const { every: _, ...rest } = line;
    return { ...rest, nth };
  }),
);

const plan: fc.Arbitrary<MonthPlan> = fc.oneof(
  text.map((title) => ({ title, known: false as const })),
  record<MonthPlan>({
    title: text,
    known: maybe(fc.constant(true as const)),
    seconds: fc.integer({ min: 60, max: 4000 }),
    signed: fc.boolean(),
    equipment: fc.constant("carriage"),
    groups: fc.dictionary(fc.constantFrom(...GROUPS), fc.integer({ min: 0, max: 900 })),
    moves: fc.dictionary(fc.constantFrom("row", "press", "plank"), fc.integer({ min: 0, max: 300 })),
    push: fc.nat({ max: 500 }),
    pull: fc.nat({ max: 500 }),
    metMinutes: fc.nat({ max: 300 }),
    talkSeconds: fc.nat({ max: 1500 }),
  } as never),
);

const free = record<{ days: number[]; from: string; to: string }>({
  days: fc.shuffledSubarray([1, 2, 3, 4, 5, 6, 7], { minLength: 1 }),
  from: fc.constantFrom("06:00", "09:30"),
  to: fc.constantFrom("12:00", "24:00"),
});
const away = record<{ from: string; to: string; why?: string }>({
  from: dateIn("2026-02-20", "2026-03-15"),
  to: dateIn("2026-03-15", "2026-04-02"),
  why: maybe(text),
});
const coach = record<MonthFile["coaches"][string]>({
  name: text,
  roles: fc.shuffledSubarray(["coach", "lead", "trainee"] as const),
  free: maybe(fc.array(free, { maxLength: 2 })),
  away: maybe(fc.array(away, { maxLength: 2 })),
});
const each = <T>(keys: readonly string[], one: fc.Arbitrary<T>): fc.Arbitrary<Record<string, T>> =>
  fc.tuple(...keys.map(() => one)).map((list) => Object.fromEntries(keys.map((key, i) => [key, list[i] as T])));

const withFill = (file: MonthFile): fc.Arbitrary<MonthFile> => {
  const slots = file.slots.filter(({ date }) => date >= FROM).map(({ id }) => id);
  const wish = fc.record({ slot: fc.constantFrom(...slots, "s0"), plan: fc.constantFrom(...PLANS) });
  const fill = record<NonNullable<MonthFile["fill"]>>({
    slots: maybe(some(slots)),
    plans: maybe(some(PLANS)),
    wishes: maybe(fc.uniqueArray(wish, { maxLength: 3, selector: ({ slot, plan: of }) => slot + of })),
    mostUses: maybe(fc.integer({ min: 1, max: 9 })),
  });
  return maybe(fill).map((chosen) => (chosen ? { ...file, fill: chosen } : file));
};

/** With single slots, lines, changed occurrences, slots of the days before, people, themes and fill settings. */
export const smallMonth: fc.Arbitrary<MonthFile> = fc
  .record({
    title: text,
    holidays: maybe(fc.constantFrom({}, { "2026-03-19": "Harbour day" })),
    rooms: each(
      ROOMS,
      fc.record({ name: text, machines: fc.integer({ min: 1, max: 20 }), equipment: fc.constant("carriage") }),
    ),
    coaches: each(COACHES, coach),
    regulars: each(
      REGULARS,
      record<{ name: string; people?: number }>({ name: text, people: maybe(fc.integer({ min: 1, max: 9 })) }),
    ),
    themes: each(
      THEMES,
      record<NonNullable<MonthFile["themes"]>[string]>({
        name: text,
        promised: maybe(fc.nat({ max: 9 })),
        shares: maybe(fc.dictionary(fc.constantFrom(...GROUPS), fc.constantFrom(0, 0.25, 1))) as never,
      }),
    ),
    plans: each(PLANS, plan),
    pattern: maybe(fc.tuple(maybe(lineOf("mon-7")), maybe(lineOf("eve")), maybe(nthLine))),
    single: fc.tuple(slotOf("s0", FROM, TO), maybe(slotOf("s1", FROM, TO)), maybe(slotOf("eve-x", FROM, TO))),
    before: maybe(fc.tuple(dateIn("2026-02-01", "2026-02-20"), slotOf("e0", "2026-02-20", "2026-02-28"))),
    changed: fc.array(fc.tuple(fc.nat(), slotOf("", FROM, TO)), { maxLength: 3 }),
    changedAt: instant,
  })
  .map(assembled)
  .chain(withFill);

function assembled(of: object): MonthFile {
  const { single, before, changed, pattern, ...rest } = JSON.parse(JSON.stringify(of)) as never as {
    single: (MonthSlot | null)[];
    before?: [string, MonthSlot];
    changed: [number, MonthSlot][];
    pattern?: (PatternLine | null)[];
  };
  const lines = pattern?.filter((line) => line !== null);
  const dates = { from: FROM, to: TO, ...(before ? { known: before[0] } : {}) };
  const given = (lines ?? []).flatMap((line) => occurrencesOf(line, { dates }).map(({ id }) => id));
  const places = new Map(
    changed.flatMap(([n, slot]) => (given.length ? [[given[n % given.length] as string, slot]] : [])),
  );
  const slots = [
    ...(before ? [before[1]] : []),
    ...single.filter((slot) => slot !== null),
    ...[...places].map(([id, slot]) => ({ ...slot, id })),
  ];
  const studio = { uid: "6f0c4b52-7f4e-4c7e-9d1e-0d2a3b4c5d6e", name: "Tidewater" };
  return {
    format: "springline.month/1",
    studio,
    zone: "Europe/Lisbon",
    dates,
    ...(lines ? { pattern: lines } : {}),
    slots,
    ...rest,
  } as never;
}
