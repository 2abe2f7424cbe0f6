/** A fill's plans are put only into classes that are as they were when it was worked out. */
import { expect, test } from "vitest";
import { changedSinceFill } from "#lib/month/fill/changed-since.ts";
import type { MonthFile, MonthSlot } from "#lib/month/types.ts";
import { smallMonth, smallPlan, smallSlot } from "#tests/support/small-month.ts";

const seen = ["a", "b"].map((id) =>
  smallSlot(id, { plan: null, date: "2026-04-07", start: id === "a" ? "10:00" : "18:00" }),
);
const plans = { one: smallPlan({ title: "One" }) };
const proposed = { a: "one", b: "one" };
const said = (slots: readonly MonthSlot[], more: Partial<MonthFile> = {}) =>
  Object.fromEntries(changedSinceFill(seen, proposed, smallMonth({ plans, slots, ...more })));

test("nothing is said of classes that stand as they were, or have another note or number of people", () => {
  expect(said(seen)).toEqual({});
  expect(
    said(seen.map((slot) => ({ ...slot, note: "Bring a mat", people: 4, changedAt: "2026-04-01T08:00:00Z" }))),
  ).toEqual({});
});

test("a class that was given a plan, moved, locked, called off or taken out is said in a sentence", () => {
  const [a, b] = seen as [MonthSlot, MonthSlot];
  expect(said([{ ...a, plan: "one" }, b])).toEqual({ a: expect.stringContaining("“One”, was no plan") });
  expect(said([{ ...a, start: "11:00" }, b])).toEqual({ a: expect.stringContaining("moved from Tue 7 Apr 10:00") });
  expect(said([a, { ...b, locked: true }])).toEqual({ b: expect.stringContaining("locked now") });
  expect(said([a, { ...b, out: true }])).toEqual({ b: expect.stringContaining("Called off") });
  expect(said([a])).toEqual({ b: expect.stringContaining("Called off") });
});

test("a plan that is no longer signed, or no longer known, is not put in", () => {
  const withdrawn = { plans: { one: smallPlan({ title: "One", signed: false }) } };
  const words = "The plan “One” is not signed any more.";
  expect(said(seen, withdrawn)).toEqual({ a: words, b: words });
  expect(Object.keys(said(seen, { plans: { one: { title: "", known: false } } }))).toEqual(["a", "b"]);
});
