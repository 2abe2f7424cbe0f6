/** Which class a log is of, and what is said about a log. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { matchLog, type PlannedClass } from "#lib/look-back/match.ts";
import { type LogRemark, logStanding } from "#lib/look-back/remarks.ts";

const DAY = Date.UTC(2026, 2, 2);
const at = (minutes: number) => DAY + minutes * 60_000;
const planned = (id: string, minutes: number, more: Partial<PlannedClass> = {}): PlannedClass => ({
  id,
  date: "2026-03-02",
  from: at(minutes),
  to: at(minutes + 45),
  room: "loft",
  plan: "a",
  ...more,
});
const log = (minutes: number, planId = "a", roomId = "loft") => ({ roomId, planId, startedAt: at(minutes) });
const idOf = (one: PlannedClass | null) => one?.id ?? null;

describe("a log is of", () => {
  test("the nearest class of its room, early or late, whatever its plan", () => {
    const classes = [planned("one", 600), planned("two", 720, { plan: "b" })];
    expect(idOf(matchLog(log(595), classes))).toBe("one");
    expect(idOf(matchLog(log(722), classes))).toBe("two");
    expect(idOf(matchLog(log(600, "a", "harbour"), classes))).toBeNull();
  });

  test("a class within 90 minutes, to the minute", () => {
    expect(idOf(matchLog(log(690), [planned("one", 600)]))).toBe("one");
    expect(idOf(matchLog(log(691), [planned("one", 600)]))).toBeNull();
    expect(idOf(matchLog(log(510), [planned("one", 600)]))).toBe("one");
    expect(idOf(matchLog(log(509), [planned("one", 600)]))).toBeNull();
  });

  test("the class with its plan, where two are about as near: a start 24 minutes late is still its own", () => {
    const classes = [planned("one", 600), planned("two", 645, { plan: "b" })];
    expect(idOf(matchLog(log(624, "a"), classes))).toBe("one");
    expect(idOf(matchLog(log(624, "b"), classes))).toBe("two");
  });

  test("the class it was given in, though its plan was swapped with the next", () => {
    const classes = [planned("one", 600), planned("two", 660, { plan: "b" })];
    expect(idOf(matchLog(log(602, "b"), classes))).toBe("one");
  });

  test("a class without a room only by its plan", () => {
    expect(idOf(matchLog(log(600), [planned("one", 600, { room: null })]))).toBe("one");
    expect(idOf(matchLog(log(600, "b"), [planned("one", 600, { room: null })]))).toBeNull();
  });

  test("the same class, in whatever order the classes are given", () => {
    const some = fc.uniqueArray(fc.integer({ min: 0, max: 30 }), { minLength: 1, maxLength: 8 });
    fc.assert(
      fc.property(some, fc.integer({ min: 0, max: 300 }), (starts, start) => {
        const classes = starts.map((n) => planned(`c${n}`, n * 10, { plan: n % 2 === 0 ? "a" : "b" }));
        expect(idOf(matchLog(log(start), classes))).toBe(idOf(matchLog(log(start), classes.toReversed())));
      }),
      { seed: 5, numRuns: 300 },
    );
  });
});

describe("of what is said about a log the newest counts", () => {
  const remark = (kind: LogRemark["kind"], more: Partial<LogRemark> = {}): LogRemark => ({
    ...{ kind, coachId: null, reason: null, actorId: "ines", at: 0 },
    ...more,
  });

  test("struck, counted and struck again, apart from who led it", () => {
    const struck = remark("struck", { reason: "Only begun by mistake." });
    expect(logStanding([])).toEqual({ named: null, struck: null });
    expect(logStanding([struck, remark("coach", { coachId: "marta" })])).toMatchObject({
      struck,
      named: { coachId: "marta" },
    });
    expect(logStanding([struck, remark("counted")]).struck).toBeNull();
    expect(logStanding([struck, remark("counted"), struck]).struck).toBe(struck);
  });
});
