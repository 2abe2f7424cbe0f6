/** What coaches are told of changed classes: pure rules, then a studio with its documents, its restart and its mail. */

import { afterEach, beforeEach, describe, expect, test } from "vitest";
import { addDocClient } from "#db/repos/doc-client-repo.ts";
import { deleteSetting, readSetting } from "#db/repos/setting-repo.ts";
import { STANDARD_FORMATS } from "#lib/formats/formats.ts";
import {
  type ClassesNow,
  type ClassFacts,
  lookAtClasses,
  NO_CLASSES,
  type ToldClasses,
} from "#lib/notices/class-changes.ts";
import { CLASS_HOLD_MS } from "#lib/notices/class-hold.ts";
import { changedClassSentence } from "#lib/notices/class-words.ts";
import { createMonthDoc } from "#lib/programme/create.ts";
import { addSlot, changeSlot, putBackSlot, type SlotChange, setSlotNote, takeOutSlot } from "#lib/programme/write.ts";
import { monthDoc } from "#server/context/live-documents.ts";
import { readMonthForSignOff } from "#server/month-sign/read-month.ts";
import { signMonth } from "#server/month-sign/sign-month.ts";
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
    beginOf: () => Number.POSITIVE_INFINITY,
    by: ["ines"],
    authorOf: () => undefined,
    signed: new Map(),
    ...change,
  });
  const begun = (is = FACTS) => lookAtClasses(NO_CLASSES, look(is)).told;
  const told = (was: ToldClasses, now: ClassesNow) =>
    lookAtClasses(was, now).changes.map(({ to, is }) => ({
      to: to.map(({ userId, byId }) => ({ userId, byId })),
      ...{ was: to[0]?.was, is },
    }));

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

  test("tells nobody of what they set themselves, where two change one class at once", () => {
    const is = { ...FACTS, start: "14:00", coach: "ines", room: "harbour" };
    const authors: Partial<Record<string, string>> = { start: "ines", coach: "ines", room: "marta" };
    const now = (author = authors) => look(is, { by: ["ines", "marta"], authorOf: (_, part) => author[part] });
    const { to } = lookAtClasses(begun(), now()).changes[0] ?? { to: [] };
    expect(to).toEqual([
      // Her own room is no news to Marta, nor are time and coach to Ines.
      { userId: "marta", byId: "ines", was: { ...FACTS, room: "harbour" } },
      { userId: "ines", byId: "marta", was: { ...is, room: "loft" } },
    ]);
    const mine = lookAtClasses(begun(), now({ ...authors, room: "ines" })).changes[0]?.to ?? [];
    expect(mine.map(({ userId }) => userId)).toEqual(["marta"]);
  });

  test("of a signed month also tells further ahead who loses a class, who is given it, and what is called off", () => {
    const far = { ...FACTS, date: "2026-11-20" };
    const signed = new Map([[KEY, far]]);
    const ahead = (was: ToldClasses, is: ClassFacts | null, more: Partial<ClassesNow> = {}) =>
      lookAtClasses(was, look(is, { signed, ...more }));
    const first = { until: "2026-11-05", classes: {} };
    expect(ahead(first, far)).toEqual({ told: first, changes: [] });
    expect(ahead(first, { ...far, start: "08:00" }).changes, "only its time").toEqual([]);
    expect(ahead(first, null).changes[0]).toMatchObject({ ahead: true, is: { out: true }, to: [{ userId: "marta" }] });
    const taken = ahead(first, { ...far, coach: "ines" });
    expect(taken.changes).toEqual([
      { key: KEY, ahead: true, is: { ...far, coach: "ines" }, to: [{ userId: "marta", byId: "ines", was: far }] },
    ]);
    expect(ahead(taken.told, { ...far, coach: "ines" }, { by: [] }).changes, "once").toEqual([]);
    const back = ahead(taken.told, far, { now: at + 1 });
    expect(back.changes, "held").toEqual([]);
    expect(ahead(back.told, far, { now: at + CLASS_HOLD_MS, by: [] }).changes).toHaveLength(1);
    const near = { until: "2026-11-20" };
    expect(ahead(taken.told, { ...far, coach: "ines" }, { ...near, by: [] }).changes, "comes near").toEqual([]);
    expect(lookAtClasses(NO_CLASSES, look({ ...far, out: true }, { signed })).changes, "at first").toEqual([]);
  });

  test("tells of one that is moved far away or near, is new, or is gone altogether", () => {
    expect(told(begun(), look({ ...FACTS, date: "2026-11-20" }))).toHaveLength(1);
    const far = begun({ ...FACTS, date: "2026-11-20" });
    expect(told(far, look(FACTS))).toEqual([{ to: [{ userId: "marta", byId: "ines" }], was: null, is: FACTS }]);
    expect(told(begun(), look(null))[0]?.is.out).toBe(true);
    expect(told(far, look({ ...FACTS, out: true }))).toEqual([]);
  });

  test("tells nothing of what is over, far, or in a month that could not be read", () => {
    expect(told(begun(), look({ ...FACTS, start: "08:00" }, { beginOf: () => at }))).toEqual([]);
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

describe("a class that begins soon", () => {
  const MINUTE = 60_000;
  const began = Date.UTC(2026, 10, 4, 15, 31);
  const begins = began + 34 * MINUTE;
  const look = (is: ClassFacts, now: number, by = ["ines"]): ClassesNow => ({
    ...{ now, until: "2026-11-05", present: new Map([[KEY, is]]), wasRead: () => true, beginOf: () => begins, by },
    ...{ authorOf: () => undefined, signed: new Map() },
  });
  const given = { ...lookAtClasses(NO_CLASSES, look(FACTS, began)).told };
  const told = { ...given, classes: { [KEY]: { told: FACTS, at: began, by: [] } } };
  const changes = (is: ClassFacts, now: number, was: ToldClasses = told) => lookAtClasses(was, look(is, now)).changes;

  test("tells at once within the hour that it is called off, or somebody else's, though it was told of just now", () => {
    expect(changes({ ...FACTS, out: true }, began + 6000)).toHaveLength(1);
    expect(changes({ ...FACTS, coach: null }, began + 6000)[0]?.to.map(({ userId }) => userId)).toEqual(["marta"]);
    expect(changes({ ...FACTS, room: null }, began + 6000)).toEqual([]);
  });

  test("holds the rest for ten minutes, and never until it has begun, even if it is looked at once a minute only", () => {
    const late = begins - 4 * MINUTE;
    const was = { ...told, classes: { [KEY]: { told: FACTS, at: late, by: [] } } };
    const is = { ...FACTS, room: null };
    const held = lookAtClasses(was, look(is, late + 1000));
    expect(held.changes).toEqual([]);
    const at = [1, 2, 3].map((n) => late + 1000 + n * MINUTE).find((now) => changes(is, now, held.told).length > 0);
    expect(at).toBeLessThan(begins);
  });
});

test("the sentence names what changed, and the reader as you", () => {
  const names = {
    readerId: "marta",
    formats: STANDARD_FORMATS,
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

  const sign = () => {
    const { hash, nextEdition } = must(readMonthForSignOff(s.app, s.people.ines, "2026-11"));
    must(signMonth(s.app, s.people.ines, "2026-11", { hash, edition: nextEdition }));
    s.db.raw.prepare("DELETE FROM notice").run();
  };

  test("a class of a signed month that lies further ahead is told when it is called off or given away", async () => {
    sign();
    await change("ines", "far", { start: "07:30" });
    expect(told("marta"), "its time is told when it is near").toEqual([]);
    await change("ines", "far", { coach: "ines" });
    expect(told("marta").map(({ kind, sentence }) => [kind, sentence.replace("Friday, ", "Friday ")])).toEqual([
      ["class-ahead", "Ines changed the class on Friday 6 November, at 07:30: now led by Ines."],
    ]);
    await write("marta", (w) => void takeOutSlot(w, "far", { at: s.app.now(), signedAt: 1 }));
    s.advance(CLASS_HOLD_MS);
    tellChangedClasses(s.app);
    expect(told("ines").map(({ sentence }) => sentence)).toEqual([
      expect.stringMatching(/^Marta called off the class on /),
    ]);
    expect(told("marta")).toHaveLength(1);
  });

  test("of two who change one class within a burst, each is told what the other did", async () => {
    const as = (who: Who, w: Parameters<Parameters<PlanStudio["write"]>[2]>[0]) =>
      addDocClient(s.db, "month/2026-11", { clientId: w.doc.clientID, userId: s.people[who].id }, s.app.now());
    const both = (who: Who, to: SlotChange) =>
      s.app.documents.transact(NOVEMBER, s.people[who].id, (doc) => {
        as(who, { doc, origin: who });
        changeSlot({ doc, origin: who }, "near", to);
      });
    both("marta", { start: "14:00" });
    await write("ines", (w) => {
      as("ines", w);
      changeSlot(w, "near", { room: "harbour" });
    });
    expect(told("marta").map(({ sentence }) => sentence)).toEqual([
      expect.stringMatching(/^Ines changed the class on .* at 14:00: now in Harbour room\.$/),
    ]);
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

  const NEW = Array.from({ length: 12 }, (_, i) => `new${i}`);
  const give = (w: Parameters<typeof addSlot>[0], id: string, i: number) =>
    void addSlot(
      w,
      { id, date: "2026-11-04", start: `${8 + i}:00`.padStart(5, "0"), minutes: 45, coach: "marta" },
      s.app.now(),
    );

  test("many classes given at once are one notice, with each of them behind it", async () => {
    await write("ines", (w) => {
      for (const [i, id] of NEW.entries()) give(w, id, i);
    });
    const [notice, ...more] = told("marta");
    expect(more).toEqual([]);
    expect(notice?.sentence.replace("Wednesday, ", "Wednesday ")).toBe(
      "Ines gave you 12 classes: the first on Wednesday 4 November, at 08:00.",
    );
    expect(notice?.path).toBe("/programme/2026-11#class=new0");
    expect(notice?.lines).toHaveLength(12);
    expect(notice?.lines[11]?.path).toBe("/programme/2026-11#class=new11");
    expect(notice?.lines[11]?.sentence).toMatch(/^Ines gave you a class on .* at 19:00\.$/);
  });

  test("so they are when they come one after another, up to what was seen; what another did is told apart", async () => {
    const one = async (who: Who, i: number) => {
      await write(who, (w) => give(w, NEW[i] ?? "", i));
      s.advance(1000);
    };
    for (let i = 0; i < 3; i++) await one("ines", i);
    expect(told("marta")).toHaveLength(3);
    for (let i = 3; i < 6; i++) await one("ines", i);
    expect(told("marta").map(({ lines }) => lines.length)).toEqual([6]);
    await one("petra", 6);
    seeNoticesOf(s.app, s.people.marta, {});
    await one("ines", 7);
    expect(told("marta").map(({ lines }) => lines.length)).toEqual([0, 0, 6]);
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
