/** What coaches are told of changed classes: pure rules, then a studio with its documents, its restart and its mail. */
import { afterEach, beforeEach, describe, expect, test } from "vitest";
import { deleteSetting, readSetting } from "#db/repos/setting-repo.ts";
import {
  CLASS_HOLD_MS,
  type ClassesNow,
  type ClassFacts,
  lookAtClasses,
  NO_CLASSES,
  type ToldClasses,
} from "#lib/notices/class-changes.ts";
import { changedClassSentence } from "#lib/notices/class-words.ts";
import { createMonthDoc } from "#lib/programme/create.ts";
import { addSlot, changeSlot, putBackSlot, type SlotChange, setSlotNote, takeOutSlot } from "#lib/programme/write.ts";
import { monthDoc } from "#server/context/live-documents.ts";
import { listNotices, seeNoticesOf } from "#server/notices/list-notices.ts";
import { tellChangedClasses } from "#server/programme/class-changes.ts";
import { type MailStudio, openMailStudio } from "#tests/support/mail-studio.ts";
import { must, type PlanStudio, type Who } from "#tests/support/plan-studio.ts";

const FACTS: ClassFacts = { date: "2026-11-04", start: "07:00", minutes: 45, room: "loft", coach: "marta", out: false };
const KEY = "2026-11/early";

describe("one look", () => {
  const at = 1_000_000_000;
  const look = (is: ClassFacts | null, change: Partial<ClassesNow> = {}): ClassesNow => ({
    now: at,
    until: "2026-11-05",
    present: new Map(is ? [[KEY, is]] : []),
    wasRead: () => true,
    isOver: () => false,
    by: ["ines"],
    ...change,
  });
  const begun = (is = FACTS) => lookAtClasses(NO_CLASSES, look(is)).told;
  const told = (was: ToldClasses, now: ClassesNow) =>
    lookAtClasses(was, now).changes.map(({ to, was, is }) => ({ to, was, is }));

  test("tells nobody at first, nor of what time alone has brought near", () => {
    expect(lookAtClasses(NO_CLASSES, look(FACTS)).changes).toEqual([]);
    const later = { ...FACTS, date: "2026-11-06" };
    expect(begun(later).classes).toEqual({});
    expect(told(begun(later), look(later, { until: "2026-11-06" }))).toEqual([]);
  });

  test.each([
    ["date", "2026-11-05"],
    ["start", "07:15"],
    ["minutes", 50],
    ["room", null],
    ["out", true],
  ])("tells its coach when its %s changes", (key, value) => {
    const is = { ...FACTS, [key]: value };
    expect(told(begun(), look(is))).toEqual([{ to: [{ userId: "marta", byId: "ines" }], was: FACTS, is }]);
  });

  test("tells both coaches when it is handed over, but not whoever did it", () => {
    const is = { ...FACTS, coach: "noor" };
    const of = (by: string[]) => told(begun(), look(is, { by }))[0]?.to.map(({ userId }) => userId) ?? [];
    expect(of(["ines"])).toEqual(["marta", "noor"]);
    expect(of(["marta"])).toEqual(["noor"]);
    expect(of(["marta", "ines"])).toEqual(["marta", "noor"]);
    expect(told(begun(), look({ ...FACTS, start: "08:00" }, { by: ["marta"] }))).toEqual([]);
  });

  test("tells of one that is moved far away or near, is new, or is gone altogether", () => {
    expect(told(begun(), look({ ...FACTS, date: "2026-11-20" }))).toHaveLength(1);
    const far = begun({ ...FACTS, date: "2026-11-20" });
    expect(told(far, look(FACTS))).toEqual([{ to: [{ userId: "marta", byId: "ines" }], was: null, is: FACTS }]);
    expect(told(begun(), look(null))[0]?.is.out).toBe(true);
    expect(told(far, look({ ...FACTS, out: true }))).toEqual([]);
  });

  test("tells nothing of what is over, far, or in a month that could not be read", () => {
    expect(told(begun(), look({ ...FACTS, start: "08:00" }, { isOver: () => true }))).toEqual([]);
    const unread = lookAtClasses(begun(), look(null, { wasRead: () => false }));
    expect([unread.changes, unread.told.classes]).toEqual([[], begun().classes]);
  });

  test("tells once in ten minutes: what changes meanwhile is told together, and what is taken back is told no more", () => {
    const first = lookAtClasses(begun(), look({ ...FACTS, start: "08:00" })).told;
    const second = { ...FACTS, start: "09:00" };
    const held = lookAtClasses(first, look(second, { now: at + 1000 }));
    expect(held.changes).toEqual([]);
    const third = lookAtClasses(held.told, look({ ...second, room: null }, { now: at + 2000, by: ["marta"] }));
    expect(third.changes).toEqual([]);
    const late = look({ ...second, room: null }, { now: at + CLASS_HOLD_MS, by: [] });
    expect(told(third.told, late)).toEqual([
      { to: [{ userId: "marta", byId: "ines" }], was: { ...FACTS, start: "08:00" }, is: { ...second, room: null } },
    ]);
    const back = look({ ...FACTS, start: "08:00" }, { now: at + CLASS_HOLD_MS });
    expect(told(held.told, back)).toEqual([]);
  });
});

test("the sentence names what changed, and the reader as you", () => {
  const names = {
    readerId: "marta",
    person: () => "Jonas",
    room: (id: string) => (id === "loft" ? "Loft" : "Harbour room"),
  };
  const say = (was: ClassFacts | null, is: Partial<ClassFacts>) =>
    changedClassSentence("Ines", { month: "2026-11", slot: "early", was, is: { ...FACTS, ...is } }, names);
  const day = "Wednesday 4 November, at 07:00";
  const plain = (text: string) => text.replace("Wednesday, ", "Wednesday ").replace("Thursday, ", "Thursday ");
  expect(plain(say(FACTS, { start: "08:00", room: "harbour", minutes: 50 }))).toBe(
    `Ines changed the class on ${day}: now at 08:00, 50 minutes long, in Harbour room.`,
  );
  expect(plain(say(FACTS, { date: "2026-11-05" }))).toBe(
    `Ines changed the class on ${day}: now on Thursday 5 November, at 07:00.`,
  );
  expect(plain(say(FACTS, { coach: "jonas" }))).toBe(`Ines changed the class on ${day}: now led by Jonas.`);
  expect(plain(say({ ...FACTS, coach: null }, {}))).toBe(`Ines changed the class on ${day}: now led by you.`);
  expect(plain(say(FACTS, { out: true }))).toBe(`Ines called off the class on ${day}.`);
  expect(plain(say({ ...FACTS, out: true }, {}))).toBe(`Ines put the class on ${day} back.`);
  expect(plain(say(null, {}))).toBe(`Ines gave you a class on ${day}, in Loft.`);
});

describe("in a studio", () => {
  let m: MailStudio;
  let s: PlanStudio;
  const NOVEMBER = monthDoc("2026-11");
  // Monday, 2 November 2026, 09:00 in London.
  beforeEach(async () => {
    m = await openMailStudio();
    s = m.s;
    s.app.documents.create(NOVEMBER, createMonthDoc("2026-11"), "ines");
    for (const [id, date] of [
      ["near", "2026-11-05"],
      ["far", "2026-11-06"],
    ] as const) {
      await write("ines", (w) => {
        addSlot(w, { id, date, start: "07:00", minutes: 45, coach: "marta", room: "loft" }, s.app.now());
      });
    }
    // As for a studio that has had these classes for long.
    seeNoticesOf(s.app, s.people.marta, {});
    s.db.raw.prepare("DELETE FROM notice").run();
    s.advance(CLASS_HOLD_MS);
  });
  afterEach(() => m.stop());

  const write = (who: Who, act: Parameters<PlanStudio["write"]>[2]) => s.write(NOVEMBER, s.people[who], act);
  const change = (who: Who, id: string, to: SlotChange) => write(who, (w) => void changeSlot(w, id, to));
  const told = (who: Who) => must(listNotices(s.app, s.people[who])).notices;

  test("somebody else's change of a near class is told, with the way to it; one's own and a far one's is not", async () => {
    await change("marta", "near", { start: "07:30" });
    await change("ines", "far", { start: "07:30" });
    expect(told("marta")).toEqual([]);
    await change("ines", "near", { start: "08:00", room: "harbour" });
    expect(
      told("marta").map(({ kind, path, sentence }) => [kind, path, sentence.replace("Thursday, ", "Thursday ")]),
    ).toEqual([
      [
        "class-changed",
        "/programme/2026-11#class=near",
        "Ines changed the class on Thursday 5 November, at 07:30: now at 08:00, in Harbour room.",
      ],
    ]);
    expect(told("ines")).toEqual([]);
  });

  test("typing a note costs no notice and no write", async () => {
    const before = readSetting(s.db, "told-classes")?.updatedAt;
    s.advance(1000);
    await write("ines", (w) => setSlotNote(w, "near", "towels"));
    expect(told("marta")).toEqual([]);
    expect(readSetting(s.db, "told-classes")?.updatedAt).toBe(before);
  });

  test("a class that is called off and put back within ten minutes is told twice at most", async () => {
    await write("ines", (w) => void takeOutSlot(w, "near", { at: s.app.now(), signedAt: null }));
    expect(told("marta").map(({ sentence }) => sentence)).toEqual([
      expect.stringMatching(/^Ines called off the class on /),
    ]);
    await write("ines", (w) => putBackSlot(w, "near"));
    expect(told("marta")).toHaveLength(1);
    s.advance(CLASS_HOLD_MS);
    tellChangedClasses(s.app);
    expect(told("marta").map(({ sentence }) => sentence)[0]).toMatch(/^Ines put the class on .* back\.$/);
  });

  test("is mailed at once to who asked for it, once, and names no class in its subject", async () => {
    m.choose("marta", { "class-changed": "at-once" });
    await change("ines", "near", { start: "08:00" });
    await change("ines", "near", { start: "08:30" });
    await m.run(1);
    await m.run(1);
    expect(m.server.arrived.map(({ mail }) => mail.subject)).toEqual(["Springline: a class of yours has changed"]);
    expect(m.server.arrived[0]?.mail.text).toContain("at 07:00: now at 08:00.");
    expect(m.server.arrived[0]?.mail.text).toContain("/programme/2026-11#class=near");
    s.advance(CLASS_HOLD_MS);
    tellChangedClasses(s.app);
    await m.run(2);
    await m.run(1);
    expect(m.server.arrived).toHaveLength(2);
    expect(m.server.arrived[1]?.mail.text).toContain("at 08:00: now at 08:30.");
  });

  test("somebody who may not read the programme any more is told nothing", async () => {
    await change("ines", "near", { start: "08:00" });
    expect(told("marta")).toHaveLength(1);
    expect(must(listNotices(s.app, { ...s.people.marta, roles: ["trainee"] })).notices).toEqual([]);
  });

  test("what was not told yet is told after a restart", async () => {
    await change("ines", "near", { start: "08:00" });
    await change("ines", "near", { start: "09:00" });
    expect(told("marta")).toHaveLength(1);
    s.advance(CLASS_HOLD_MS);
    // Another process: nothing of the first one's memory is there.
    const again = { ...s.app, db: { ...s.db, raw: s.db.raw, orm: s.db.orm, damage: s.db.damage } };
    tellChangedClasses(again);
    expect(told("marta").map(({ sentence }) => sentence)[0]).toMatch(/at 08:00: now at 09:00\.$/);
    tellChangedClasses(again);
    expect(told("marta")).toHaveLength(2);
  });

  test("a studio that begins with this tells nothing of what was there", () => {
    deleteSetting(s.db, "told-classes");
    tellChangedClasses({ ...s.app, db: s.db });
    expect(told("marta")).toEqual([]);
  });
});
