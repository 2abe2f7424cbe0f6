import { describe, expect, it } from "vitest";
import * as Y from "yjs";
import { ActUndo } from "#lib/client/act-undo.ts";
import type { MonthSlot, PatternLine } from "#lib/month/types.ts";
import { copiesOfLastMonth } from "#lib/programme/copies.ts";
import { createMonthDoc } from "#lib/programme/create.ts";
import { monthUndoScopes, type Slot } from "#lib/programme/layout.ts";
import { migrateMonth } from "#lib/programme/migrate.ts";
import { carriedOver } from "#lib/programme/new-month.ts";
import { monthProblems, overlapMinutes } from "#lib/programme/problems.ts";
import { monthClasses, readDeletedSlots, readMonth, readMonthState, readSlotById } from "#lib/programme/read.ts";
import {
  addSlot,
  asItsLine,
  changeSlot,
  openSlotNote,
  putBackSlot,
  setSlotNote,
  takeOutSlot,
} from "#lib/programme/write.ts";
import { themeNamed } from "#lib/programme/write-lists.ts";
import { applyFill, copyWeek, takeLastMonth } from "#lib/programme/write-many.ts";
import { changeLine, changeLineFrom, changeRuleFrom, putBackLine, takeOutLine } from "#lib/programme/write-pattern.ts";
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

const file = (id: string, over: Partial<MonthSlot> = {}): MonthSlot => ({
  ...{ id, date: "2026-11-04", start: "09:00", minutes: 45, coach: "marta", room: "harbour", plan: "p1" },
  ...over,
});
const MON: PatternLine = { id: "mon", days: [1], start: "07:00", minutes: 30, room: "harbour", coach: "marta" };
/** Within the hour in which everything was made. */
const SOON = { at: 3_600_000, signedAt: null };
const LATER = { at: 2 * 86_400_000, signedAt: null };
const monthOfLine = (over: Partial<PatternLine> = {}, made = 0) =>
  createMonthDoc("2026-11", { pattern: [{ ...MON, ...over }] }, made);
const classes = (doc: Y.Doc) => monthClasses(readMonthState(doc));
const at = (doc: Y.Doc, id: string) => classes(doc).find((one) => one.id === id);
const me = (doc: Y.Doc) => ({ doc, origin: "me" });

describe("month document", () => {
  it("holds slots by day and time", () => {
    const slots = [file("b", { date: "2026-11-09" }), file("c", { start: "08:00" }), file("a", { start: "18:30" })];
    const month = readMonth(createMonthDoc("2026-11", { slots }));
    expect(month.month).toBe("2026-11");
    expect(month.slots.map((s) => s.id)).toEqual(["c", "a", "b"]);
    expect(month.slots[2]).toEqual(slot("b", { date: "2026-11-09", theme: "" }));
  });

  it("reads at most 120 characters of a holiday's name, each of them whole, and keeps the rest", () => {
    const doc = createMonthDoc("2026-11", {
      holidays: { "2026-11-05": "🎏".repeat(400), "2026-11-06": "🎏".repeat(120) },
    });
    const { holidays } = readMonthState(doc);
    expect(holidays["2026-11-05"]).toBe(`${"🎏".repeat(119)}…`);
    expect(holidays["2026-11-06"]).toBe("🎏".repeat(120));
    expect(doc.getMap("holidays").get("2026-11-05")).toHaveLength(800);
  });

  it("takes a theme that is known under its name without reading the month, and makes one that is not", () => {
    const doc = createMonthDoc("2026-11");
    const w = me(doc);
    // Known to who asks, and not in this document: so the document was not asked.
    expect(themeNamed(w, " arms ", { known: { name: "Arms" } })).toBe("known");
    expect(readMonthState(doc).themes).toEqual({});
    const id = themeNamed(w, "Legs", {});
    expect(Object.keys(readMonthState(doc).themes)).toEqual([id]);
    // Made by somebody else a moment ago: the words give the same id.
    expect(themeNamed(w, "Legs", {})).toBe(id);
    expect(Object.keys(readMonthState(doc).themes)).toEqual([id]);
  });

  it("writes, moves, takes out and puts back", () => {
    const doc = createMonthDoc("2026-11");
    const w = me(doc);
    expect(addSlot(w, file("a", { coach: null }), 0)).toBe(true);
    expect(changeSlot(w, "a", { coach: "ines", minutes: 50, plan: null, theme: themeNamed(w, "Legs and trunk") })).toBe(
      true,
    );
    setSlotNote(w, "a", "Bring the short bars");
    expect(changeSlot(w, "a", { date: "2026-11-05", start: "10:15" })).toBe(true);
    const changed = slot("a", {
      ...{ date: "2026-11-05", time: "10:15", coachId: "ines", minutes: 50, planId: null },
      note: "Bring the short bars",
    });
    expect(readSlotById(doc, "a")).toEqual(changed);
    // A mistake of this hour vanishes; what stood for a day is called off and stays in the file.
    expect(takeOutSlot(w, "a", SOON)).toBe("vanished");
    expect(classes(doc)).toEqual([]);
    expect(readDeletedSlots(doc)).toEqual([{ slot: changed, deletedAt: SOON.at }]);
    putBackSlot(w, "a");
    expect(takeOutSlot(w, "a", LATER)).toBe("out");
    expect(readMonth(doc).slots).toEqual([]);
    expect(at(doc, "a")).toMatchObject({ out: true });
    expect(readDeletedSlots(doc)).toMatchObject([{ slot: changed }]);
    putBackSlot(w, "a");
    expect(readMonth(doc).slots).toEqual([changed]);
    expect(takeOutSlot(w, "a", { at: 10, signedAt: 5 })).toBe("out");
  });

  it("refuses a slot of another month, an impossible time and an id that is taken", () => {
    const doc = createMonthDoc("2026-11", { slots: [file("a")], pattern: [MON] });
    const w = me(doc);
    let updates = 0;
    doc.on("update", () => updates++);
    expect(addSlot(w, file("b", { date: "2026-12-01" }), 0)).toBe(false);
    expect(addSlot(w, file("b", { start: "25:00" }), 0)).toBe(false);
    expect(addSlot(w, file("a"), 0)).toBe(false);
    expect(addSlot(w, file("mon-20261109"), 0)).toBe(false);
    expect(changeSlot(w, "a", { date: "2026-12-01" })).toBe(false);
    expect(changeSlot(w, "mon-20261109", { date: "2026-12-01" })).toBe(false);
    expect(changeSlot(w, "nobody", { start: "10:00" })).toBe(false);
    expect(updates).toBe(0);
  });

  it("[INV-05] emits no update when it is read and keeps unknown keys", () => {
    const doc = createMonthDoc("2026-11", { slots: [file("a")], pattern: [MON] });
    const maps = doc.getMap<Y.Map<unknown>>("slots");
    maps.get("a")?.set("from-later", 7);
    maps.set("damaged", new Y.Map<unknown>([["date", 5]]));
    doc.getMap("slots").set("no map", 3);
    doc.getMap("lines").set("damaged", new Y.Map<unknown>([["days.9", "x"]]));
    for (const key of ["mon-20261109.time", "mon-2026.coachId", ".", "x.y"]) doc.getMap("changed").set(key, 9);
    for (const key of ["nobody.free.1", "marta.away.1", "a.b.c.d"]) doc.getMap("coaches").set(key, { from: 4 });
    doc.getMap("holidays").set("2026-02-30", "never");
    let updates = 0;
    doc.on("update", () => updates++);
    expect(readMonth(doc).slots.map((s) => s.id)).toEqual([
      "mon-20261102",
      "a",
      "mon-20261109",
      "mon-20261116",
      "mon-20261123",
      "mon-20261130",
    ]);
    readDeletedSlots(doc);
    expect(updates).toBe(0);
    expect(maps.get("a")?.get("from-later")).toBe(7);
  });

  it("is left alone when it is newer", () => {
    const doc = createMonthDoc("2026-11", { slots: [file("a")] });
    expect(migrateMonth(doc)).toEqual({ kind: "current" });
    const steps = [{ to: 3, run: (d: Y.Doc) => d.getMap("meta").set("stepped", true) }];
    expect(migrateMonth(doc, steps, 3)).toEqual({ kind: "migrated", from: 2 });
    expect(migrateMonth(doc, steps, 3)).toEqual({ kind: "current" });
    expect(migrateMonth(doc)).toEqual({ kind: "newer", version: 3 });
    expect(readMonth(doc).slots).toHaveLength(1);
  });

  it("keeps both people's letters in one note and both people's fields in one slot", () => {
    const a = createMonthDoc("2026-11", { slots: [file("s", { note: "towels" })] });
    const b = new Y.Doc();
    Y.applyUpdate(b, Y.encodeStateAsUpdate(a));
    setSlotNote({ doc: a, origin: 1 }, "s", "two towels");
    setSlotNote({ doc: b, origin: 2 }, "s", "towels and water");
    changeSlot({ doc: a, origin: 1 }, "s", { coach: "jonas" });
    changeSlot({ doc: b, origin: 2 }, "s", { date: "2026-11-20" });
    Y.applyUpdate(a, Y.encodeStateAsUpdate(b));
    Y.applyUpdate(b, Y.encodeStateAsUpdate(a));
    expect(readSlotById(a, "s")).toEqual(readSlotById(b, "s"));
    expect(readSlotById(a, "s")).toMatchObject({ note: "two towels and water", coachId: "jonas", date: "2026-11-20" });
  });
});

/** A document as version 1 wrote it. */
function firstVersion(slots: Readonly<Record<string, Readonly<Record<string, unknown>>>>): Y.Doc {
  const doc = new Y.Doc();
  doc.getMap("meta").set("version", 1);
  doc.getMap("meta").set("month", "2026-11");
  for (const [id, values] of Object.entries(slots)) {
    const map = new Y.Map<unknown>();
    for (const [key, value] of Object.entries(values))
      map.set(key, key === "theme" || key === "note" ? new Y.Text(String(value)) : value);
    doc.getMap("slots").set(id, map);
  }
  return doc;
}
const V1 = {
  date: "2026-11-04",
  time: "09:00",
  minutes: 45,
  coachId: "marta",
  roomId: "harbour",
  planId: "p1",
  note: "towels",
};

describe("a month of version 1", () => {
  it("keeps everything: typed themes become the month's, and two that migrate it agree", () => {
    const old = firstVersion({
      a: { ...V1, theme: " Legs  and trunk" },
      b: { ...V1, theme: "Legs and trunk" },
      c: { ...V1, theme: "" },
      d: { ...V1, theme: "Gone", deleted: 5 },
    });
    const [one, two] = [new Y.Doc(), new Y.Doc()];
    for (const doc of [one, two]) {
      Y.applyUpdate(doc, Y.encodeStateAsUpdate(old));
      expect(migrateMonth(doc)).toEqual({ kind: "migrated", from: 1 });
    }
    expect(readMonth(one)).toEqual(readMonth(two));
    const legs = slot("a", { note: "towels" });
    expect(readMonth(one).slots).toEqual([legs, { ...legs, id: "b" }, { ...legs, id: "c", theme: "" }]);
    expect(readDeletedSlots(one)).toEqual([{ slot: { ...legs, id: "d", theme: "Gone" }, deletedAt: 5 }]);
    expect(
      Object.values(readMonthState(one).themes)
        .map(({ name }) => name)
        .sort(),
    ).toEqual(["Gone", "Legs and trunk"]);
    Y.applyUpdate(one, Y.encodeStateAsUpdate(two));
    expect(readMonth(one)).toEqual(readMonth(two));
  });

  it("takes in what a device from before brings later: new classes, and letters in a theme that nobody changed since", () => {
    const old = firstVersion({ a: { ...V1, theme: "Legs" }, b: { ...V1, theme: "Legs" } });
    const late = new Y.Doc();
    Y.applyUpdate(late, Y.encodeStateAsUpdate(old));
    const doc = new Y.Doc();
    Y.applyUpdate(doc, Y.encodeStateAsUpdate(old));
    migrateMonth(doc);
    changeSlot(me(doc), "b", { theme: themeNamed(me(doc), "Arms") });
    const maps = late.getMap<Y.Map<unknown>>("slots");
    for (const id of ["a", "b"]) (maps.get(id) as Y.Map<Y.Text>).get("theme")?.insert(4, " late");
    maps.set(
      "n",
      new Y.Map<unknown>([
        ["date", "2026-11-04"],
        ["time", "09:00"],
        ["theme", new Y.Text("New")],
      ]),
    );
    Y.applyUpdate(doc, Y.encodeStateAsUpdate(late));
    expect(readMonth(doc).slots.map(({ id, theme }) => [id, theme])).toEqual([
      ["a", "Legs late"],
      ["b", "Arms"],
      ["n", "New"],
    ]);
  });
});

describe("the pattern", () => {
  it("changes one class, this and later ones, or all of a line; every class keeps its id", () => {
    const doc = monthOfLine();
    const w = me(doc);
    changeSlot(w, "mon-20261109", { coach: "ines" });
    changeLineFrom(w, "mon-20261116", { room: "loft", start: "08:00" });
    changeLine(w, "mon", { minutes: 40 });
    expect(classes(doc).map(({ id, start, minutes, room, coach }) => [id, start, minutes, room, coach])).toEqual([
      ["mon-20261102", "07:00", 40, "harbour", "marta"],
      ["mon-20261109", "07:00", 40, "harbour", "ines"],
      ["mon-20261116", "08:00", 40, "loft", "marta"],
      ["mon-20261123", "08:00", 40, "loft", "marta"],
      ["mon-20261130", "08:00", 40, "loft", "marta"],
    ]);
    asItsLine(w, "mon-20261109");
    expect(at(doc, "mon-20261109")).toMatchObject({ coach: "marta", start: "08:00" });
  });

  it("gives other days from one class on, and keeps the ones before; a count goes on counting", () => {
    const doc = monthOfLine({ count: 4 });
    changeRuleFrom(me(doc), "mon-20261116", { days: [2] });
    expect(classes(doc).map(({ date }) => date)).toEqual(["2026-11-02", "2026-11-09", "2026-11-17", "2026-11-24"]);
  });

  it("ends a line that people know of class by class, and lets a new one vanish", () => {
    const [known, fresh] = [monthOfLine(), monthOfLine({}, LATER.at - 1)];
    for (const doc of [known, fresh]) takeOutLine(me(doc), "mon", "2026-11-16", LATER);
    expect(classes(known).map(({ out }) => out ?? false)).toEqual([false, false, true, true, true]);
    expect(carriedOver(readMonthState(known), "2026-12").pattern).toEqual([]);
    expect(classes(fresh)).toEqual([]);
    putBackLine(me(fresh), "mon");
    expect(classes(fresh)).toHaveLength(5);
  });

  it("a line of which nothing was changed is not copied when its note is opened", () => {
    const doc = monthOfLine({ note: "towels" });
    expect(openSlotNote(me(doc), "mon-20261109")?.toString()).toBe("towels");
    expect(readMonthState(doc).slots).toEqual([]);
    setSlotNote(me(doc), "mon-20261109", "towels, two");
    expect(readMonthState(doc).slots).toMatchObject([{ id: "mon-20261109", note: "towels, two" }]);
  });
});

describe("many classes at once", () => {
  const ids = () => {
    let n = 0;
    return { newId: () => `n${++n}`, now: 0, room: 1000 };
  };

  it("copies a week: what the pattern gives there gets what was changed here, others are added once", () => {
    const doc = monthOfLine();
    const w = me(doc);
    changeSlot(w, "mon-20261109", { coach: "ines" });
    addSlot(w, file("x", { date: "2026-11-11" }), 0);
    const options = ids();
    expect(copyWeek(w, "2026-11-11", "2026-11-17", options)).toEqual({
      ...{ added: ["n1"], changed: ["mon-20261116"], there: 0, noDay: 0 },
    });
    expect(at(doc, "mon-20261116")).toMatchObject({ coach: "ines", date: "2026-11-16" });
    expect(at(doc, "n1")).toMatchObject({ date: "2026-11-18", start: "09:00", room: "harbour" });
    // Neither is new or different any more, and a week that runs out of the month has days without a place.
    expect(copyWeek(w, "2026-11-11", "2026-11-17", options)).toEqual({ added: [], changed: [], there: 2, noDay: 0 });
    expect(copyWeek(w, "2026-11-11", "2026-11-30", options)).toMatchObject({ changed: ["mon-20261130"], noDay: 1 });
  });

  const themes = { a: { name: "Arms" }, b: { name: "Best of the year" }, l: { name: "Legs" }, t: { name: "Trunk" } };
  const october = (over: Partial<MonthSlot> = {}) =>
    readMonthState(
      createMonthDoc("2026-10", {
        themes: { ...themes, gone: { name: "Not in November" } },
        pattern: [{ ...MON, theme: "a" }],
        slots: [
          file("x", { date: "2026-10-07", theme: "t", note: "once" }),
          file("y", { date: "2026-10-14", theme: "t", locked: true }),
          file("z", { date: "2026-10-08", theme: "b", ...over }),
        ],
      }),
    );

  it("takes last month over to the same day of the same week; what stands there already stays as it is", () => {
    const doc = createMonthDoc("2026-11", { themes, pattern: [{ ...MON, theme: "l" }] });
    // 7 October 2026 is the first Wednesday of its month, 4 November of the next.
    addSlot(me(doc), file("here", { date: "2026-11-11", theme: "l", coach: "ines" }), 0);
    const before = classes(doc);
    const options = { ...ids(), shiftThemes: 0 };
    const would = copiesOfLastMonth(readMonthState(doc), october(), 0);
    expect(would).toMatchObject({ there: 5, noDay: 0, themes: [], themesLost: 0, change: [] });
    // Four Mondays, and the second Wednesday at nine in the harbour room.
    expect(takeLastMonth(me(doc), october(), options)).toEqual({
      ...{ added: ["n1", "n2"], changed: [], there: 5, noDay: 0 },
    });
    expect(classes(doc).filter(({ id }) => !id.startsWith("n"))).toEqual(before);
    expect([at(doc, "n1"), at(doc, "n2")]).toMatchObject([
      { date: "2026-11-04", theme: "t" },
      { date: "2026-11-12", theme: "b" },
    ]);
    for (const id of ["n1", "n2"]) expect(at(doc, id)).not.toHaveProperty("plan");
    expect(at(doc, "n1")).not.toHaveProperty("note");
    expect(takeLastMonth(me(doc), october(), options)).toMatchObject({ added: [], there: 7 });
  });

  it("moves on only themes that last month had more than once, in the order of their names", () => {
    const doc = createMonthDoc("2026-11", { themes });
    const would = copiesOfLastMonth(readMonthState(doc), october(), 1);
    expect(would.themes).toEqual([
      { from: "a", to: "t" },
      { from: "t", to: "a" },
    ]);
    expect(would.add.map(({ date, theme }) => [date, theme]).sort()).toEqual([
      ["2026-11-02", "t"],
      ["2026-11-04", "a"],
      ["2026-11-09", "t"],
      ["2026-11-11", "a"],
      ["2026-11-12", "b"],
      ["2026-11-16", "t"],
      ["2026-11-23", "t"],
    ]);
    expect(copiesOfLastMonth(readMonthState(doc), october(), 2).themes).toEqual([]);
    const strange = copiesOfLastMonth(readMonthState(doc), october({ theme: "gone" }), 1);
    expect(strange).toMatchObject({ themesLost: 1 });
    expect(strange.add.find(({ date }) => date === "2026-11-12")).toMatchObject({ theme: null });
  });

  it("puts a filling in as one step of undo, and leaves locked classes alone", () => {
    const doc = createMonthDoc("2026-11", { pattern: [MON], slots: [file("x", { locked: true }), file("y")] });
    const undo = new ActUndo({
      doc,
      origin: "me",
      scopes: monthUndoScopes(doc),
      takenOut: { key: "deleted", value: 0 },
    });
    expect(applyFill(me(doc), { x: "p9", y: null, "mon-20261102": "p9" })).toEqual(["y", "mon-20261102"]);
    expect(at(doc, "mon-20261102")?.plan).toBe("p9");
    expect(at(doc, "x")?.plan).toBe("p1");
    undo.undo();
    expect([at(doc, "y")?.plan, at(doc, "mon-20261102")?.plan]).toEqual(["p1", undefined]);
    expect(readMonthState(doc).slots.map(({ id }) => id)).toEqual(["x", "y"]);
    undo.destroy();
  });
});

describe("a class of the pattern after an undo", () => {
  const id = "mon-20261102";
  const acts: Readonly<Record<string, (doc: Y.Doc) => unknown>> = {
    "moved in its day": (doc) => changeSlot(me(doc), id, { start: "10:00" }),
    "moved to another day": (doc) => changeSlot(me(doc), id, { date: "2026-11-03", start: "10:00" }),
    "given a plan": (doc) => changeSlot(me(doc), id, { plan: "p9" }),
    "called off": (doc) => takeOutSlot(me(doc), id, LATER),
    "given other regulars": (doc) => changeSlot(me(doc), id, { regulars: ["early"] }),
  };
  for (const [name, done] of Object.entries(acts))
    it(`is as its line says and can be changed again: ${name}`, () => {
      const doc = createMonthDoc("2026-11", { regulars: { early: { name: "Early" } }, pattern: [MON] });
      const undo = new ActUndo({
        doc,
        origin: "me",
        scopes: monthUndoScopes(doc),
        takenOut: { key: "deleted", value: 0 },
      });
      const before = at(doc, id);
      done(doc);
      undo.undo();
      expect(at(doc, id)).toEqual(before);
      expect(changeSlot(me(doc), id, { minutes: 55, coach: "ines" })).toBe(true);
      expect(at(doc, id)).toMatchObject({ start: MON.start, minutes: 55, coach: "ines" });
      undo.destroy();
    });
});

describe("a new month", () => {
  it("takes over regulars, themes, times that are not over and lines that still run; nothing else", () => {
    const earlier = createMonthDoc("2026-11", {
      ...{ title: "November", holidays: { "2026-11-05": "Fair" }, regulars: { g: { name: "Early tide", people: 8 } } },
      themes: { a: { name: "Arms", promised: 3, shares: { biceps: 0.2 } } },
      pattern: [
        { ...MON, plan: "p1", every: 2, except: ["2026-11-02"] },
        { ...MON, id: "old", to: "2026-11-20" },
      ],
      slots: [file("x")],
      coachTimes: {
        marta: {
          free: [{ days: [1], from: "06:00", to: "24:00" }],
          away: [
            { from: "2026-11-01", to: "2026-11-03" },
            { from: "2026-11-28", to: "2026-12-02" },
          ],
        },
      },
    });
    const state = readMonthState(createMonthDoc("2026-12", carriedOver(readMonthState(earlier), "2026-12")));
    expect(state).toMatchObject({ title: "", holidays: {}, slots: [] });
    expect(state.regulars).toEqual({ g: { name: "Early tide", people: 8 } });
    expect(state.themes).toEqual({ a: { name: "Arms", promised: 3, shares: { biceps: 0.2 } } });
    expect(state.coachTimes).toEqual({
      marta: { free: [{ days: [1], from: "06:00", to: "24:00" }], away: [{ from: "2026-11-28", to: "2026-12-02" }] },
    });
    expect(state.pattern).toEqual([{ ...MON, every: 2, from: "2026-11-01" }]);
    // 1 November 2026 is a Sunday, so the weeks that count are those of 26 October, 9 and 23 November, 7 and 21 December.
    expect(monthClasses(state).map(({ date }) => date)).toEqual(["2026-12-07", "2026-12-21"]);
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
