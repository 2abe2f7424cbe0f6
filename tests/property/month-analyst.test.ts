/** An analyst that has seen the month before answers as one that has not, whatever is changed in between. */
import { expect, test } from "vitest";
import { dateOfDay, dayNumber } from "#lib/calendar/days.ts";
import { MonthAnalyst } from "#lib/month/check/analyst.ts";
import { readMonthValue } from "#lib/month/file/read-month.ts";
import type { MonthFile, MonthSlot } from "#lib/month/types.ts";
import { busyMonth, somePlan, someSlot } from "#tests/support/busy-month.ts";
import { Dice } from "#tests/support/dice.ts";
import { often } from "#tests/support/long.ts";

const SIZES = { coaches: 4, slots: 90, plans: 8 };
type Edit = (month: MonthFile, dice: Dice) => MonthFile;

/** One slot gets new values; every other stays the same object. */
const oneSlot =
  (change: (slot: MonthSlot, dice: Dice, month: MonthFile) => Partial<MonthSlot>): Edit =>
  (month, dice) => {
    const i = dice.upTo(month.slots.length);
    return {
      ...month,
      slots: month.slots.map((slot, k) => (k === i ? { ...slot, ...change(slot, dice, month) } : slot)),
    };
  };

const EDITS: readonly Edit[] = [
  oneSlot((_, dice) => ({ plan: `plan-${dice.upTo(8)}` })),
  oneSlot(() => ({ plan: null })),
  oneSlot((slot) => ({ out: !slot.out })),
  oneSlot((slot, dice) => ({ start: dice.one(["06:00", slot.start, "23:50"]), minutes: 5 + dice.upTo(90) })),
  oneSlot((_, dice) => ({ date: dateOfDay(dayNumber("2026-02-02") + dice.upTo(58)) })),
  oneSlot((_, dice) => ({
    coach: `coach-${dice.upTo(4)}`,
    room: `room-${dice.upTo(4)}`,
    regulars: [`group-${dice.upTo(8)}`],
  })),
  oneSlot((_, dice) => ({ theme: `theme-${dice.upTo(4)}`, people: dice.upTo(20) })),
  (month, dice) => ({ ...month, slots: [...month.slots, { ...someSlot(dice, dice.upTo(1e9), SIZES) }] }),
  (month, dice) => ({ ...month, slots: month.slots.toSpliced(dice.upTo(month.slots.length), 1) }),
  (month, dice) => ({ ...month, plans: { ...month.plans, [`plan-${dice.upTo(8)}`]: somePlan(dice) } }),
  (month, dice) => ({ ...month, plans: { ...month.plans, [`plan-${dice.upTo(8)}`]: { title: "", known: false } } }),
  (month, dice) => ({
    ...month,
    pattern: month.pattern?.map((line) => ({ ...line, minutes: 30 + dice.upTo(60) })) ?? [],
  }),
  (month, dice) => ({ ...month, holidays: { [dateOfDay(dayNumber("2026-03-01") + dice.upTo(31))]: "Day off" } }),
  (month, dice) => ({ ...month, limits: { heavySeconds: 200 + dice.upTo(300), likeMost: dice.upTo(10) / 10 } }),
  (month, dice) => ({
    ...month,
    standards: { [dice.one(["no-room", "too-alike"])]: { level: dice.one(["off", "must", "info"]) } },
  }),
  (month, dice) => ({ ...month, dates: { ...month.dates, from: dateOfDay(dayNumber("2026-02-20") + dice.upTo(11)) } }),
  (month, dice) => ({ ...month, zone: dice.one(["Europe/Lisbon", "America/New_York", "Australia/Sydney"]) }),
  (month, dice) => ({ ...month, asOf: dateOfDay(dayNumber("2026-02-20") + dice.upTo(40)) }),
  (month, dice) => ({
    ...month,
    coaches: { ...month.coaches, "coach-1": { name: `Renamed ${dice.upTo(9)}`, roles: [] } },
  }),
  (month, dice) => ({
    ...month,
    regulars: { ...month.regulars, "group-1": { name: "Renamed", people: 1 + dice.upTo(30) } },
  }),
  (month, dice) => ({
    ...month,
    rooms: { ...month.rooms, "room-1": { name: "Loft", machines: 1 + dice.upTo(9), equipment: "long-rail" } },
  }),
];

test("after random changes", () => {
  for (let seed = 1; seed <= often(4, 60); seed++) {
    const [dice, analyst] = [new Dice(seed), new MonthAnalyst()];
    let month = busyMonth(SIZES, seed);
    for (let i = 0; i < 30; i++) {
      if (i % 10 === 0) expect(readMonthValue(structuredClone(month))).toMatchObject({ ok: true });
      // Sometimes the month is looked at again as it was, or an old one comes back.
      const next = dice.upTo(10) === 0 ? month : dice.one(EDITS)(month, dice);
      if (dice.upTo(12) === 0) analyst.look(busyMonth(SIZES, seed));
      const fresh = new MonthAnalyst().look(structuredClone(next));
      expect(analyst.look(next)).toEqual(fresh);
      month = next;
    }
  }
});

test("what did not change is the same object", () => {
  const analyst = new MonthAnalyst();
  const month = busyMonth(SIZES);
  const before = analyst.look(month);
  const slots = month.slots.map((slot) =>
    slot.id === "slot-3" ? { ...slot, regulars: ["group-2"], coach: "coach-2" } : slot,
  );
  const after = analyst.look({ ...month, slots });
  const others = Object.keys(month.regulars).filter((id) => before.sums.regulars[id] === after.sums.regulars[id]);
  expect(others.length).toBeGreaterThanOrEqual(Object.keys(month.regulars).length - 2);
  expect(before.slots.filter((slot) => !after.slots.includes(slot)).length).toBe(1);
});
