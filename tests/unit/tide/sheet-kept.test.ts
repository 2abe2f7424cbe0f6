/** A sheet that keeps its days says what a fresh one says, and a day on which nothing changed stays the same object. */

import { expect, it } from "vitest";
import { STANDARD_FORMATS } from "#lib/formats/formats.ts";
import { MonthAnalyst } from "#lib/month/check/analyst.ts";
import type { MonthFile, MonthSlot } from "#lib/month/types.ts";
import { HEAD_TO_FOOT } from "#lib/tide/columns.ts";
import { tideSheet } from "#lib/tide/sheet.ts";
import { SheetKept } from "#lib/tide/sheet-kept.ts";
import type { Measure, TideKind } from "#lib/tide/types.ts";
import { busyMonth } from "#tests/support/busy-month.ts";
import { Dice } from "#tests/support/dice.ts";

const measure: Measure = (words, bold) => words.length * (bold ? 7.4 : 6.8);
const sizesOf = (kind: TideKind) => ({ kind, railWidth: 640, groupWidth: 20, findingsWidth: 220, tops: [], measure });

it("lays out again only the days that changed", () => {
  const [dice, kept, analyst] = [new Dice(3), new SheetKept(), new MonthAnalyst()];
  let month: MonthFile = busyMonth({ coaches: 6, slots: 120, plans: 20 });
  const lay = (kind: TideKind, with_: SheetKept) => {
    const { sums, findings } = analyst.look(month);
    const of = {
      month,
      sums,
      findings,
      regulars: "group-1",
      rooms: Object.keys(month.rooms),
      groups: HEAD_TO_FOOT,
      formats: STANDARD_FORMATS,
    };
    return tideSheet(of, sizesOf(kind), with_);
  };
  let was = lay("laptop", kept);
  let same = 0;
  for (let i = 0; i < 30; i++) {
    const id = dice.one(month.slots).id;
    month = { ...month, ...changed(month, id, dice) };
    const kind: TideKind = i % 10 === 9 ? "tablet" : "laptop";
    const now = lay(kind, kept);
    expect(now).toEqual(lay(kind, new SheetKept()));
    for (const [at, day] of now.days.entries()) {
      if (day === was.days[at]) same++;
      else expect(day).not.toEqual(was.days[at]);
    }
    was = now;
  }
  // Of 31 days, thirty times: most have nothing to do with one class.
  expect(same).toBeGreaterThan(31 * 30 * 0.6);
});

function changed(month: MonthFile, id: string, dice: Dice): Partial<MonthFile> {
  const by = dice.upTo(6);
  if (by === 0) return { coaches: { ...month.coaches, "coach-1": { name: `Coach ${dice.upTo(9)}`, roles: ["lead"] } } };
  const change: Partial<MonthSlot> = [
    { out: true },
    { coach: `coach-${dice.upTo(6)}` },
    { plan: `plan-${dice.upTo(20)}` },
    { start: "10:10" },
    { date: "2026-03-17" },
  ][by - 1] as Partial<MonthSlot>;
  return { slots: month.slots.map((slot) => (slot.id === id ? { ...slot, ...change } : slot)) };
}
