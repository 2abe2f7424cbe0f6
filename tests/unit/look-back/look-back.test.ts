/** A month looked back on in a real studio: what counts, who reads what, and what people add to a log. */
import { afterEach, beforeEach, describe, expect, test } from "vitest";
import { insertClassLog } from "#db/repos/class-log-repo.ts";
import { listRecord } from "#db/repos/record-repo.ts";
import { canonicalJson } from "#lib/canonical/canonical.ts";
import type { Card } from "#lib/card/schema.ts";
import type { ClassLog } from "#lib/floor/class-log-schema.ts";
import type { MonthSlot } from "#lib/month/types.ts";
import type { Person } from "#lib/policy/can.ts";
import { addSlot } from "#lib/programme/write.ts";
import { addRegulars } from "#lib/programme/write-lists.ts";
import { monthDoc } from "#server/context/live-documents.ts";
import { readLookBack } from "#server/look-back/look-back.ts";
import { remarkLog } from "#server/look-back/remark-log.ts";
import { classesTaughtBy } from "#server/marks/classes-taught.ts";
import { monthSettings, studioClock } from "#server/month-facts/month-settings.ts";
import { must, openStudio, outcome, type PlanStudio, ROOMS } from "#tests/support/plan-studio.ts";
import { signedClass, taughtLog } from "#tests/support/signed-class.ts";

const MONTH = "2026-11";
let s: PlanStudio;
let card: Card;
let planId: string;

beforeEach(async () => {
  s = openStudio();
  monthSettings(s.app);
  ({ card, id: planId } = await signedClass(s));
  s.advance(20 * 86_400_000); // to 22 November
});
afterEach(() => s.stop());

/** A class that begins when the log of that session does, give or take some minutes. */
function plan(session: number, more: Partial<MonthSlot> = {}, minutes = 0): void {
  const [date = "", start = ""] = studioClock(s.app, startOf(session) + minutes * 60_000).split("T");
  const slot = { id: `s${session}`, date, start, minutes: 45, room: ROOMS.harbour, coach: "marta", plan: planId };
  s.app.documents.transact(monthDoc(MONTH), "marta", (doc) =>
    addSlot({ doc, origin: "marta" }, { ...slot, ...more }, s.app.now()),
  );
}
const startOf = (session: number) => Date.parse(taughtLog(card, [], session).startedAt);
function taught(session: number, change: (log: ClassLog) => ClassLog = (log) => log): string {
  const log = change(taughtLog(card, [], session));
  const kept = { log, roomId: ROOMS.harbour, deviceId: "d", receivedAt: s.app.now() };
  insertClassLog(s.db, kept, { key: log.sessionId, logJson: canonicalJson(log) });
  return log.sessionId;
}
/** Ended in the opening. */
const begun = (log: ClassLog): ClassLog => ({ ...log, whole: false, rows: log.rows.slice(0, 1) });
const look = (who: Person = s.people.ines) => must(readLookBack(s.app, who, MONTH));
const remark = (who: Person, key: string, body: Parameters<typeof remarkLog>[3]) =>
  outcome(remarkLog(s.app, who, key, body));

describe("sums", () => {
  test("classes that are over: taught, only begun, without a log; those to come and those outside apart", () => {
    plan(2);
    plan(3);
    plan(4);
    plan(27);
    taught(2);
    taught(3, begun);
    taught(8);
    const { sums } = look();
    expect(sums.all).toEqual({
      ...{ planned: 3, taught: 1, abandoned: 1, noLog: 1 },
      ...{ plannedMinutes: 135, taughtMinutes: 45 },
    });
    expect(sums).toMatchObject({ toCome: 1, outside: 1, struck: 0 });
  });

  test("late minutes are those after the class was to begin", () => {
    plan(2, {}, -12);
    taught(2);
    expect(look().sums.late).toEqual({ classes: 1, minutes: 12 });
    expect(look().logs).toMatchObject([{ minutesLate: 12, end: "whole", coachName: "Marta" }]);
  });

  test("groups of muscles: a whole class by the clock gives what its plan says", () => {
    plan(2);
    taught(2);
    const { groups } = look().sums;
    expect(groups.length).toBeGreaterThan(0);
    for (const { planned, taught: got } of groups) expect(got).toBeCloseTo(planned, 0);
  });

  test("groups of muscles by regulars, by name; a class begun twice is planned once, by its better log", () => {
    const november = monthDoc(MONTH);
    s.app.documents.transact(november, "marta", (doc) => {
      const w = { doc, origin: "marta" };
      addRegulars(w, "eve", { name: "Evening" });
      addRegulars(w, "dock", { name: "Dock" });
    });
    plan(2, { regulars: ["eve", "dock"] });
    plan(3, { regulars: ["eve"] });
    plan(4);
    taught(2);
    taught(3, begun);
    taught(3.001);
    taught(4);
    const { groups, groupsByRegulars } = look().sums;
    expect(groupsByRegulars.map(({ name }) => name)).toEqual(["Dock", "Evening", "no regulars"]);
    const [dock, evening, none] = groupsByRegulars.map((one) => one.groups);
    for (const [i, { group, planned, taught: got }] of groups.entries()) {
      const [one, two, other] = [dock?.[i], evening?.[i], none?.[i]];
      expect([one?.group, two?.group, other?.group]).toEqual([group, group, group]);
      expect(planned).toBeCloseTo(3 * (one?.planned ?? 0), 6);
      expect(two?.planned).toBeCloseTo(2 * (one?.planned ?? 0), 6);
      expect(got).toBeCloseTo((two?.taught ?? 0) + (other?.taught ?? 0), 6);
    }
  });

  test("a month that nobody wrote in has nothing, and a month out of range is not there", () => {
    expect(must(readLookBack(s.app, s.people.ines, "2026-08")).sums.all.planned).toBe(0);
    expect(outcome(readLookBack(s.app, s.people.ines, "2060-01"))).toBe("not-found");
  });
});

describe("who reads what", () => {
  test("a coach has their own one by one and all others as one sum; leads and managers all; the rest nothing", () => {
    plan(2);
    plan(3, { coach: "ines" });
    plan(4, { coach: "jonas" });
    for (const session of [2, 3, 4]) taught(session);
    const own = look(s.people.marta);
    expect(own.logs.map(({ coachId }) => coachId)).toEqual(["marta"]);
    expect(own.sums.coaches.map(({ id, planned }) => [id, planned])).toEqual([
      ["others", 2],
      ["marta", 1],
    ]);
    expect(JSON.stringify(own)).not.toMatch(/Ines|Jonas|"ines"|"jonas"/);
    for (const who of [s.people.ines, s.people.petra]) {
      expect(look(who).logs).toHaveLength(3);
      // By name, whoever led most.
      expect(look(who).sums.coaches.map(({ name }) => name)).toEqual(["Ines", "Jonas", "Marta"]);
    }
    for (const who of [s.people.jonas, s.people.sam]) expect(outcome(readLookBack(s.app, who, MONTH))).toBe("no-right");
  });
});

describe("remarks", () => {
  test("a struck log counts nowhere, and can be counted again; each once, with a reason, on the record", () => {
    plan(2);
    const key = taught(2, begun);
    expect(classesTaughtBy(s.app, "marta")).toHaveLength(1);
    expect(remark(s.people.ines, key, { kind: "counted" })).toBe("counts-already");
    expect(remark(s.people.ines, key, { kind: "struck", reason: "Begun by mistake." })).toBe("ok");
    expect(remark(s.people.petra, key, { kind: "struck", reason: "Begun by mistake." })).toBe("struck-already");
    expect(look().sums).toMatchObject({ all: { abandoned: 0, noLog: 1 }, struck: 1 });
    expect(look().logs).toMatchObject([{ struck: { byName: "Ines", reason: "Begun by mistake." } }]);
    expect(classesTaughtBy(s.app, "marta")).toEqual([]);
    expect(remark(s.people.petra, key, { kind: "counted" })).toBe("ok");
    expect(look().sums.all.abandoned).toBe(1);
    const kinds = listRecord(s.db, 0, 1000).map(({ kind }) => kind);
    expect(kinds).toEqual(expect.arrayContaining(["class-log-struck", "class-log-counted"]));
    expect(() => s.db.raw.prepare("delete from class_log_remark").run()).toThrow("only added to");
  });

  test("who led it: a coach says so of themselves, a lead of anybody, and then the coach no more", () => {
    plan(2, { coach: "ines" });
    const key = taught(2);
    expect(remark(s.people.marta, key, { kind: "coach", coachId: "jonas" })).toBe("no-right");
    expect(remark(s.people.marta, key, { kind: "coach", coachId: "marta" })).toBe("ok");
    expect(look(s.people.marta).logs).toMatchObject([{ coachId: "marta", named: true }]);
    expect(classesTaughtBy(s.app, "marta")).toHaveLength(1);
    expect(classesTaughtBy(s.app, "ines")).toHaveLength(0);
    expect(remark(s.people.ines, key, { kind: "coach", coachId: "jonas" })).toBe("ok");
    expect(remark(s.people.marta, key, { kind: "coach", coachId: "marta" })).toBe("named-already");
    expect(classesTaughtBy(s.app, "jonas")).toHaveLength(1);
    expect(remark(s.people.ines, key, { kind: "coach", coachId: "sam" })).toBe("no-such-person");
    expect(remark(s.people.ines, key, { kind: "coach", coachId: "nobody" })).toBe("no-such-person");
  });

  test("are not for who may not look back, not for a coach to strike, and not for logs that there are not", () => {
    const key = taught(2);
    for (const who of [s.people.jonas, s.people.sam])
      expect(remark(who, key, { kind: "coach", coachId: who.id })).toBe("no-right");
    expect(remark(s.people.marta, key, { kind: "struck", reason: "Begun by mistake." })).toBe("no-right");
    expect(remark(s.people.ines, "none", { kind: "counted" })).toBe("not-found");
  });
});
