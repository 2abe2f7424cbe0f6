/** What stands at a coach's desk of classes that are no longer as their month was signed. */
import { afterEach, beforeEach, expect, test } from "vitest";
import type { Person } from "#lib/policy/can.ts";
import { addSlot, changeSlot, takeOutSlot } from "#lib/programme/write.ts";
import { monthDoc } from "#server/context/live-documents.ts";
import { readWaiting } from "#server/desk/waiting.ts";
import { readMonthForSignOff } from "#server/month-sign/read-month.ts";
import { signMonth } from "#server/month-sign/sign-month.ts";
import { createPlan } from "#server/plans/create-plan.ts";
import { must, openStudio, type PlanStudio, ROOMS } from "#tests/support/plan-studio.ts";

const MONTH = "2026-11";
const doc = monthDoc(MONTH);
let s: PlanStudio;
// Monday, 2 November 2026.
beforeEach(() => {
  s = openStudio();
});
afterEach(() => s.stop());

type Change = Parameters<typeof changeSlot>[2];
const write = (act: (w: Parameters<typeof addSlot>[0]) => void, month = doc) =>
  s.app.documents.transact(month, "ines", (d) => act({ doc: d, origin: "ines" }));
const add = (id: string, date: string, coach = "marta", month = doc) =>
  write((w) => addSlot(w, { id, date, start: "18:00", minutes: 45, room: ROOMS.harbour, coach }, s.app.now()), month);
const change = (id: string, to: Change) => write((w) => changeSlot(w, id, to));
function sign(month = MONTH): void {
  const { hash, nextEdition } = must(readMonthForSignOff(s.app, s.people.ines, month));
  must(signMonth(s.app, s.people.ines, month, { hash, edition: nextEdition }));
}
const changed = (who: Person = s.people.marta) =>
  must(readWaiting(s.app, who)).waiting.flatMap((one) => (one.kind === "changed" ? [one] : []));
const words = (who?: Person) => changed(who).map((one) => [one.classAt, one.words]);

test("moved, another room, another coach, called off, new: each in words, by time, with the way to the class", () => {
  for (const [id, day] of [
    ["moved", 3],
    ["room", 4],
    ["off", 5],
    ["given", 6],
    ["same", 7],
  ] as const)
    add(id, `2026-11-0${day}`);
  sign();
  expect(changed()).toEqual([]);
  s.advance(60_000);
  change("moved", { start: "19:00" });
  change("room", { room: ROOMS.loft });
  write((w) => void takeOutSlot(w, "off", { at: s.app.now(), signedAt: null }));
  change("given", { coach: "ines" });
  add("extra", "2026-11-08");
  expect(words()).toEqual([
    ["2026-11-03 19:00", "Since edition 1 was signed: moved from Tue 3 Nov 18:00."],
    ["2026-11-04 18:00", "Since edition 1 was signed: room Loft, was Harbour room."],
    ["2026-11-05 18:00", "Called off since edition 1 was signed."],
    ["2026-11-06 18:00", "Since edition 1 was signed: coach Ines, was Marta."],
    ["2026-11-08 18:00", "New since edition 1 was signed."],
  ]);
  expect(words(s.people.ines)).toEqual([["2026-11-06 18:00", "Since edition 1 was signed: coach Ines, was Marta."]]);
  expect(changed()[0]).toMatchObject({ month: MONTH, slot: "moved", planId: null, title: "Class" });
  // Signed anew, nothing differs.
  sign();
  expect(changed()).toEqual([]);
});

test("what is over, what is more than a fortnight ahead and what no coach need know of is not said", () => {
  add("over", "2026-11-03");
  add("far", "2026-11-30");
  add("small", "2026-11-12");
  sign();
  change("over", { start: "19:00" });
  change("far", { start: "19:00" });
  change("small", { people: 5 });
  expect(words()).toEqual([["2026-11-03 19:00", "Since edition 1 was signed: moved from Tue 3 Nov 18:00."]]);
  s.advance(2 * 86_400_000);
  expect(words()).toEqual([]);
  s.advance(14 * 86_400_000);
  expect(words()).toEqual([["2026-11-30 19:00", "Since edition 1 was signed: moved from Mon 30 Nov 18:00."]]);
});

test("the month that comes next counts too; a month that was never signed does not", () => {
  s.advance(23 * 86_400_000);
  add("next", "2026-12-02", "marta", monthDoc("2026-12"));
  write((w) => changeSlot(w, "next", { start: "19:00" }), monthDoc("2026-12"));
  expect(changed()).toEqual([]);
  sign("2026-12");
  write((w) => changeSlot(w, "next", { start: "20:00" }), monthDoc("2026-12"));
  expect(words()).toEqual([["2026-12-02 20:00", "Since edition 1 was signed: moved from Wed 2 Dec 19:00."]]);
});

test("another plan is named only to who may read it, and who may not open the programme is told nothing", () => {
  const made = { title: "Jonas’s first try", lengthSeconds: 600, roomId: ROOMS.harbour };
  const draft = must(createPlan(s.app, s.people.jonas, made));
  add("one", "2026-11-05");
  add("his", "2026-11-06", "jonas");
  sign();
  change("one", { plan: draft.id });
  change("his", { start: "19:00" });
  expect(words()).toEqual([
    ["2026-11-05 18:00", "Since edition 1 was signed: plan one that is not known, was no plan."],
  ]);
  expect(JSON.stringify(must(readWaiting(s.app, s.people.marta)))).not.toContain("first try");
  expect(changed(s.people.jonas)).toEqual([]);
});
