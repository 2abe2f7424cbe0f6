/** The words of a month's changes, written out by hand. */
import { describe, expect, test } from "vitest";
import { monthAsSigned } from "#lib/month/changes/as-signed.ts";
import { changeMarks, changeSince } from "#lib/month/changes/change-words.ts";
import { monthChanges } from "#lib/month/changes/month-changes.ts";
import { renamedSince } from "#lib/month/changes/renamed-since.ts";
import { slotChanges, withinMonth } from "#lib/month/changes/slot-changes.ts";
import type { MonthFile, MonthSlot } from "#lib/month/types.ts";
import { smallMonth, smallPlan, smallSlot } from "#tests/support/small-month.ts";

const studio = {
  rooms: {
    loft: { name: "Loft", machines: 8, equipment: "long-rail" },
    harbour: { name: "Harbour room", machines: 8, equipment: "long-rail" },
  },
  coaches: { marta: { name: "Marta", roles: ["coach"] as const }, jonas: { name: "Jonas", roles: ["coach"] as const } },
  plans: { a: smallPlan({ title: "Arms, chest" }), b: smallPlan({ title: "Legs, trunk" }) },
};
const month = (slots: MonthSlot[], more: Partial<MonthFile> = {}) => smallMonth({ ...studio, slots, ...more });
const [one] = [smallSlot("one")];
const said = (now: MonthSlot[], was = [one]) => monthChanges(month(was), month(now));
const marks = (now: MonthSlot[], was = [one]) => slotChanges(month(was), month(now)).flatMap(changeMarks);

// 6 April 2026 is a Monday (ISO 8601, week 15).
describe("in words", () => {
  test("a class that moves, on its day and to another", () => {
    expect(said([{ ...one, start: "18:00" }])).toEqual(["Mon 6 Apr 18:00, Loft: moved from Mon 6 Apr 10:00."]);
    expect(marks([{ ...one, start: "18:00" }])).toEqual(["moved from 10:00"]);
    expect(marks([{ ...one, date: "2026-04-07" }])).toEqual(["moved from Mon 6 Apr 10:00"]);
  });

  test("another room, coach, plan, length and none of them", () => {
    expect(said([{ ...one, room: "harbour", coach: "jonas", plan: "b", minutes: 60 }])).toEqual([
      "Mon 6 Apr 10:00, Harbour room: 60 min, was 45; room Harbour room, was Loft; coach Jonas, was Marta; plan “Legs, trunk”, was “Arms, chest”.",
    ]);
    expect(said([{ ...one, coach: null, plan: null }])).toEqual([
      "Mon 6 Apr 10:00, Loft: no coach, was Marta; no plan, was “Arms, chest”.",
    ]);
    expect(marks([{ ...one, plan: "b" }])).toEqual(["other plan"]);
  });

  test("called off, gone, on again and new; what is out in both is not told", () => {
    const out = { ...one, out: true };
    expect(said([out])).toEqual(["Called off: Mon 6 Apr 10:00, Loft."]);
    expect(said([])).toEqual(["Called off: Mon 6 Apr 10:00, Loft."]);
    expect(said([{ ...one, start: "11:00" }], [out])).toEqual([
      "On again: Mon 6 Apr 11:00, Loft: moved from Mon 6 Apr 10:00.",
    ]);
    expect(said([one], [])).toEqual(["New: Mon 6 Apr 10:00, Loft."]);
    expect(slotChanges(month([out]), month([{ ...out, start: "12:00" }]))).toEqual([]);
    expect(slotChanges(month([out]), month([]))).toEqual([]);
  });

  test("what classes rest on: plans, names, limits, the zone", () => {
    const draft = { ...studio.plans, a: smallPlan({ title: "Arms, chest", signed: false }) };
    const signed = { ...studio.plans, a: smallPlan({ title: "Arms, chest", edition: 1 }) };
    const again = { ...studio.plans, a: smallPlan({ title: "Arms, chest", edition: 2 }) };
    expect(monthChanges(month([one], { plans: draft }), month([one], { plans: signed }))).toEqual([
      "The plan “Arms, chest” is signed now.",
    ]);
    expect(monthChanges(month([one], { plans: signed }), month([one], { plans: again }))).toEqual([
      "The plan “Arms, chest”: edition 2, was 1.",
    ]);
    expect(monthChanges(month([one]), month([one], { limits: { restHours: 12 }, zone: "Europe/Oslo" }))).toEqual([
      "The studio’s time zone is Europe/Oslo, was Europe/Lisbon.",
      "The studio’s limits for months were changed.",
    ]);
  });

  test("where the class is named already, since when, without what its coach need not know", () => {
    const since = (now: MonthSlot[], was = [one]) =>
      slotChanges(month(was), month(now)).map((change) =>
        changeSince(change, { was: month(was), now: month(now) }, "edition 1 was signed"),
      );
    const out = { ...one, out: true };
    expect(since([{ ...one, start: "18:00", coach: "jonas", people: 7 }])).toEqual([
      "Since edition 1 was signed: moved from Mon 6 Apr 10:00; coach Jonas, was Marta.",
    ]);
    expect(since([out])).toEqual(["Called off since edition 1 was signed."]);
    expect(since([one], [])).toEqual(["New since edition 1 was signed."]);
    expect(since([{ ...one, plan: "b" }], [out])).toEqual([
      "On again since edition 1 was signed; plan “Legs, trunk”, was “Arms, chest”.",
    ]);
    expect(since([one], [out])).toEqual(["On again since edition 1 was signed."]);
    expect(since([{ ...one, people: 7, note: "towels", locked: true }])).toEqual([null]);
  });

  test("what was changed and put back is said to be so", () => {
    expect(said([{ ...one, sequence: 2, changedAt: "2026-03-21T08:00:00Z" }])[0]).toMatch(/changed and put back/);
    expect(said([one])).toEqual([]);
  });
});

test("the days before the month count only as neighbours", () => {
  const before = smallSlot("before", { date: "2026-03-30" });
  const dates = { from: "2026-04-01", to: "2026-04-30", known: "2026-03-04" };
  const changes = slotChanges(month([before], { dates }), month([one], { dates }));
  expect(changes.map(({ id }) => id)).toEqual(["before", "one"]);
  expect(withinMonth(changes, dates).map(({ id }) => id)).toEqual(["one"]);
});

test("what is signed has neither the day it is read nor what nobody in the month uses", () => {
  const read = month([{ ...one, formerCoaches: ["jonas"] }], { asOf: "2026-04-02", fill: { mostUses: 2 } });
  const { asOf, fill, rooms, coaches, plans } = monthAsSigned(read);
  expect([asOf, fill]).toEqual([undefined, undefined]);
  expect([rooms, coaches, plans].map((map) => Object.keys(map))).toEqual([["loft"], ["marta", "jonas"], ["a"]]);
});

test("another name of a theme, a group or a room is told once, with how many classes have it", () => {
  const named = (theme: string, group: string, room: string) =>
    month(
      [
        { ...one, theme: "t", regulars: ["g"] },
        { ...one, id: "two", date: "2026-04-07", theme: "t" },
        { ...one, id: "off", date: "2026-04-08", theme: "t", out: true },
      ],
      {
        themes: { t: { name: theme }, unused: { name: theme } },
        regulars: { g: { name: group } },
        rooms: { ...studio.rooms, loft: { ...studio.rooms.loft, name: room } },
      },
    );
  const was = named("Whole body", "Early birds", "Loft");
  expect(slotChanges(was, named("Core", "Larks", "Attic"))).toEqual([]);
  expect(renamedSince(was, named("Core", "Larks", "Attic")).map(({ sentence }) => sentence)).toEqual([
    "Theme Whole body is now called Core: 2 classes.",
    "Regulars Early birds is now called Larks: 1 class.",
    "Room Loft is now called Attic: 2 classes.",
  ]);
  expect(renamedSince(was, was)).toEqual([]);
});
