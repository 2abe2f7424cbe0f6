import { describe, expect, it } from "vitest";
import * as Y from "yjs";
import { createMonthDoc } from "#lib/programme/create.ts";
import type { Slot } from "#lib/programme/layout.ts";
import { migrateMonth } from "#lib/programme/migrate.ts";
import { monthProblems, overlapMinutes } from "#lib/programme/problems.ts";
import { readDeletedSlots, readMonth, readSlotById } from "#lib/programme/read.ts";
import { addSlot, deleteSlot, moveSlot, restoreSlot, setSlotField } from "#lib/programme/write.ts";
import type { PlanSummary } from "#lib/protocol/messages.ts";

const slot = (id: string, over: Partial<Slot> = {}): Slot => ({
  id,
  date: "2026-11-04",
  time: "09:00",
  minutes: 45,
  theme: "Legs and trunk",
  coachId: "marta",
  roomId: "harbour",
  planId: "p1",
  note: "",
  ...over,
});
const plan = (id: string, over: Partial<PlanSummary> = {}): PlanSummary => ({
  id,
  title: "Whole body",
  state: "signed-off",
  edition: 1,
  lengthSeconds: 2700,
  ownerName: "Marta Lindqvist",
  ...over,
});
const kinds = (slots: Slot[], plans: PlanSummary[], today = "2026-11-01") =>
  monthProblems(slots, { plans, hidden: [] }, today).map((p) => p.kind);

describe("month document", () => {
  it("holds slots by day and time", () => {
    const doc = createMonthDoc("2026-11", [
      slot("b", { date: "2026-11-09" }),
      slot("c", { time: "08:00" }),
      slot("a", { time: "18:30" }),
    ]);
    const month = readMonth(doc);
    expect(month.month).toBe("2026-11");
    expect(month.slots.map((s) => s.id)).toEqual(["c", "a", "b"]);
    expect(month.slots[2]).toEqual(slot("b", { date: "2026-11-09" }));
  });

  it("writes, moves, deletes and puts back", () => {
    const doc = createMonthDoc("2026-11");
    const w = { doc, origin: "me" };
    expect(addSlot(w, slot("a", { coachId: null }))).toBe(true);
    setSlotField(w, "a", "coachId", "ines");
    setSlotField(w, "a", "note", "Bring the short bars");
    setSlotField(w, "a", "minutes", 50);
    setSlotField(w, "a", "planId", null);
    expect(moveSlot(w, "a", { date: "2026-11-05", time: "10:15" })).toBe(true);
    const changed = slot("a", {
      date: "2026-11-05",
      time: "10:15",
      coachId: "ines",
      note: "Bring the short bars",
      minutes: 50,
      planId: null,
    });
    expect(readSlotById(doc, "a")).toEqual(changed);
    deleteSlot(w, "a", 1000);
    expect(readMonth(doc).slots).toEqual([]);
    expect(readDeletedSlots(doc)).toEqual([{ slot: changed, deletedAt: 1000 }]);
    restoreSlot(w, "a");
    expect(readMonth(doc).slots).toEqual([changed]);
  });

  it("refuses a slot of another month, an impossible time and an id that is taken", () => {
    const doc = createMonthDoc("2026-11", [slot("a")]);
    const w = { doc, origin: "me" };
    let updates = 0;
    doc.on("update", () => updates++);
    expect(addSlot(w, slot("b", { date: "2026-12-01" }))).toBe(false);
    expect(addSlot(w, slot("b", { time: "25:00" }))).toBe(false);
    expect(addSlot(w, slot("a"))).toBe(false);
    expect(moveSlot(w, "a", { date: "2026-12-01" })).toBe(false);
    expect(moveSlot(w, "nobody", { time: "10:00" })).toBe(false);
    expect(updates).toBe(0);
  });

  it("[INV-05] emits no update when it is read and keeps unknown keys", () => {
    const doc = createMonthDoc("2026-11", [slot("a")]);
    doc.getMap<Y.Map<unknown>>("slots").get("a")?.set("from-later", 7);
    doc.getMap<Y.Map<unknown>>("slots").set("damaged", new Y.Map([["date", 5]]));
    let updates = 0;
    doc.on("update", () => updates++);
    expect(readMonth(doc).slots.map((s) => s.id)).toEqual(["a"]);
    readDeletedSlots(doc);
    expect(updates).toBe(0);
    expect(doc.getMap<Y.Map<unknown>>("slots").get("a")?.get("from-later")).toBe(7);
  });

  it("is migrated once, and left alone when it is newer", () => {
    const doc = createMonthDoc("2026-11", [slot("a")]);
    expect(migrateMonth(doc)).toEqual({ kind: "current" });
    const steps = [{ to: 2, run: (d: Y.Doc) => d.getMap("meta").set("stepped", true) }];
    expect(migrateMonth(doc, steps, 2)).toEqual({ kind: "migrated", from: 1 });
    expect(migrateMonth(doc, steps, 2)).toEqual({ kind: "current" });
    expect(migrateMonth(doc)).toEqual({ kind: "newer", version: 2 });
    expect(readMonth(doc).slots).toHaveLength(1);
  });

  it("keeps both people's letters in one note and both people's fields in one slot", () => {
    const a = createMonthDoc("2026-11", [slot("s", { note: "towels" })]);
    const b = new Y.Doc();
    Y.applyUpdate(b, Y.encodeStateAsUpdate(a));
    setSlotField({ doc: a, origin: 1 }, "s", "note", "two towels");
    setSlotField({ doc: b, origin: 2 }, "s", "note", "towels and water");
    setSlotField({ doc: a, origin: 1 }, "s", "coachId", "jonas");
    moveSlot({ doc: b, origin: 2 }, "s", { date: "2026-11-20" });
    Y.applyUpdate(a, Y.encodeStateAsUpdate(b));
    Y.applyUpdate(b, Y.encodeStateAsUpdate(a));
    expect(readSlotById(a, "s")).toEqual(readSlotById(b, "s"));
    expect(readSlotById(a, "s")).toMatchObject({
      note: "two towels and water",
      coachId: "jonas",
      date: "2026-11-20",
    });
  });
});

describe("problems of a month", () => {
  it("finds nothing in a good month", () => {
    expect(
      monthProblems([slot("a"), slot("b", { time: "09:45" })], { plans: [plan("p1")], hidden: [] }, "2026-11-01"),
    ).toEqual([]);
  });

  it("reports a missing plan, a deleted one, an unsigned one and one changed since it was signed", () => {
    expect(kinds([slot("a", { planId: null })], [])).toEqual(["no-plan"]);
    expect(kinds([slot("a")], [])).toEqual(["plan-not-found"]);
    const hidden = monthProblems([slot("a")], { plans: [], hidden: ["p1"] }, "2026-11-01");
    expect(hidden).toMatchObject([{ kind: "plan-hidden", slots: ["a"] }]);
    expect(kinds([slot("a")], [plan("p1", { state: "handed-in", edition: 0 })])).toEqual(["plan-unsigned"]);
    expect(kinds([slot("a")], [plan("p1", { state: "in-writing", edition: 2 })])).toEqual(["plan-changed"]);
  });

  it("reports a plan that is longer than its slot, and by how much", () => {
    expect(kinds([slot("a")], [plan("p1", { lengthSeconds: 2700 })])).toEqual([]);
    const [problem] = monthProblems(
      [slot("a")],
      { plans: [plan("p1", { lengthSeconds: 2701 })], hidden: [] },
      "2026-11-01",
    );
    expect(problem).toMatchObject({ kind: "plan-too-long", slots: ["a"], minutes: 1 });
  });

  it("reports clashes of coach and room in minutes, but none when one class ends as the next begins", () => {
    const early = slot("a", { time: "09:00", minutes: 45 });
    const late = slot("b", { time: "09:44", minutes: 45 });
    expect(monthProblems([late, early], { plans: [plan("p1")], hidden: [] }, "2026-11-01")).toMatchObject([
      { kind: "coach-clash", slots: ["a", "b"], minutes: 1 },
      { kind: "room-clash", slots: ["a", "b"], minutes: 1 },
    ]);
    expect(kinds([early, slot("b", { time: "09:45" })], [plan("p1")])).toEqual([]);
    expect(kinds([early, slot("b", { roomId: "loft" })], [plan("p1")])).toEqual(["coach-clash"]);
    expect(kinds([early, slot("b", { coachId: "jonas" })], [plan("p1")])).toEqual(["room-clash"]);
    expect(kinds([slot("a", { coachId: null, roomId: null }), slot("b")], [plan("p1")])).toEqual([]);
    expect(kinds([early, slot("b", { date: "2026-11-05" })], [plan("p1")])).toEqual([]);
  });

  it("sees a class that runs over midnight", () => {
    const night = slot("a", { time: "23:30", minutes: 60 });
    expect(overlapMinutes(night, slot("b", { date: "2026-11-05", time: "00:10" }))).toBe(20);
  });

  it("ignores past days", () => {
    const slots = [slot("a", { planId: null }), slot("b", { planId: null, date: "2026-11-05" })];
    expect(monthProblems(slots, { plans: [], hidden: [] }, "2026-11-05").flatMap((p) => p.slots)).toEqual(["b"]);
  });
});
