/** From the logs of real classes to a room's own seconds: shown, taken by a manager in part, recorded, and by nobody else. */
import { afterEach, beforeEach, describe, expect, test } from "vitest";
import { readRoom } from "#db/repos/room-repo.ts";
import { lastStudioEvent } from "#db/repos/studio-event-repo.ts";
import type { Card } from "#lib/card/schema.ts";
import type { TimedAction } from "#lib/timings/studio-seconds.ts";
import { takeLog } from "#server/class-log/take-log.ts";
import { readTaughtTimings, takeTimings, takeTimingsSchema } from "#server/rooms/taught-timings.ts";
import { must, openStudio, outcome, type PlanStudio, ROOMS, type Who } from "#tests/support/plan-studio.ts";
import { signedClass, type Touches, taughtLog } from "#tests/support/signed-class.ts";

// Opening 0-60, row 60-160, change 160-180, press 180-300, change 300-320, row 320-420, change 420-440, press 440-540, closing.
// Every change: two quarter turns, nothing else; the usual seconds make it 2 + 2 x 1.5 = 5, the plan gives 20.
let s: PlanStudio;
let card: Card;
beforeEach(async () => {
  s = openStudio();
  ({ card } = await signedClass(s));
});
afterEach(() => s.stop());

const device = (roomId: string) => ({ kind: "device", id: "tablet", roomId }) as const;
let session = 0;
function teach(touches: Touches, roomId: string = ROOMS.harbour, kind: "class" | "rehearsal" = "class"): void {
  session += 1;
  const log = taughtLog(card, touches, session, kind);
  s.advance(Math.max(0, Date.parse(log.startedAt) - s.app.now()));
  must(takeLog(s.app, device(roomId), log));
}
/** People are ready 9 s into every change, and the coach goes on. */
const READY_AT_9: Touches = [
  ["next", 169],
  ["next", 298],
  ["next", 407],
];
const told = (roomId: string = ROOMS.harbour) => must(readTaughtTimings(s.app, s.people.petra, roomId));
const secondsOf = (action: TimedAction) => told().rows.find((row) => row.action === action)?.seconds ?? Number.NaN;

describe("what the classes tell", () => {
  test("nothing without a class, and nothing by a class that ran by its clock", () => {
    expect(told()).toMatchObject({ classes: 0, changes: 0, taken: null });
    teach([]);
    expect(told()).toMatchObject({ classes: 1, changes: 0 });
    for (const row of told().rows) expect([row.seconds, row.seenIn]).toEqual([row.usual, 0]);
  });

  test("more with every class: changes of 9 s where the usual makes 5", () => {
    const made = () => secondsOf("base") + 2 * secondsOf("quarterTurn");
    teach(READY_AT_9);
    const [first, sure] = [made(), told().rows[0]?.share ?? 0];
    expect(told()).toMatchObject({ classes: 1, changes: 3, leftOut: 0 });
    expect(first).toBeGreaterThan(5);
    for (let n = 0; n < 9; n++) teach(READY_AT_9);
    expect(made()).toBeGreaterThan(first);
    expect(made()).toBeCloseTo(9, 0);
    expect(told().rows[0]?.share).toBeGreaterThan(sure);
    expect(secondsOf("springOn")).toBe(3);
  });

  test("not by classes of another room, nor by rehearsals", () => {
    teach(READY_AT_9, ROOMS.loft);
    teach(READY_AT_9, ROOMS.harbour, "rehearsal");
    expect(told()).toMatchObject({ classes: 0, changes: 0 });
    expect(told(ROOMS.loft)).toMatchObject({ classes: 1, changes: 3 });
  });

  test("taking does not make the same classes count twice", () => {
    for (let n = 0; n < 4; n++) teach(READY_AT_9);
    const before = told().rows;
    must(takeTimings(s.app, s.people.petra, ROOMS.harbour, { take: { base: secondsOf("base") } }));
    expect(told().rows).toEqual(before);
  });
});

describe("a manager", () => {
  beforeEach(() => {
    for (let n = 0; n < 4; n++) teach(READY_AT_9);
  });

  test("takes some: this room's estimates change, the rest stays, and it is on record", () => {
    const quarterTurn = secondsOf("quarterTurn");
    const before = readRoom(s.db, ROOMS.harbour);
    const room = must(takeTimings(s.app, s.people.petra, ROOMS.harbour, { take: { quarterTurn } }));
    expect(room).toEqual({ ...before, equipment: { ...before?.equipment, actionSeconds: { quarterTurn } } });
    expect(readRoom(s.db, ROOMS.harbour)).toEqual(room);
    expect(readRoom(s.db, ROOMS.loft)?.equipment.actionSeconds).toBeUndefined();
    expect(lastStudioEvent(s.db, "timings-taken", ROOMS.harbour)).toMatchObject({
      actorId: "petra",
      at: s.app.now(),
      data: { quarterTurn },
    });
    expect(told().taken).toEqual({ at: s.app.now(), byName: "Petra", seconds: { quarterTurn } });
  });

  test("open plans hear of it, as when seconds are typed", async () => {
    s.announced.length = 0;
    must(takeTimings(s.app, s.people.petra, ROOMS.harbour, { take: { base: secondsOf("base") } }));
    await s.app.checks.idle();
    expect(s.announced.map((a) => a.news.t)).toEqual(["studio", "checked"]);
  });

  test("takes only what was shown: another class since, another number, an action no class tells of", () => {
    const base = secondsOf("base");
    teach([["next", 161.5]]);
    expect(secondsOf("base")).not.toBe(base);
    for (const take of [{ base }, { base: 60 }, { springOn: 3 }, { springOn: 60 }]) {
      const answer = outcome(takeTimings(s.app, s.people.petra, ROOMS.harbour, { take }));
      expect(answer, JSON.stringify(take)).toBe("changed-meanwhile");
    }
    expect(readRoom(s.db, ROOMS.harbour)?.equipment.actionSeconds).toBeUndefined();
    expect(takeTimingsSchema.safeParse({ take: {} }).success).toBe(false);
    expect(takeTimingsSchema.safeParse({ take: { base: -1 } }).success).toBe(false);
    expect(outcome(takeTimings(s.app, s.people.petra, "nowhere", { take: { base } }))).toBe("not-found");
  });

  test("and nobody else sees or takes them", () => {
    const take = { base: secondsOf("base") };
    for (const who of ["ines", "marta", "jonas", "sam"] satisfies Who[]) {
      expect(outcome(readTaughtTimings(s.app, s.people[who], ROOMS.harbour)), who).toBe("no-right");
      expect(outcome(takeTimings(s.app, s.people[who], ROOMS.harbour, { take })), who).toBe("no-right");
    }
    expect(outcome(takeTimings(s.app, device(ROOMS.harbour), ROOMS.harbour, { take }))).toBe("no-right");
    expect(outcome(takeTimings(s.app, null, ROOMS.harbour, { take }))).toBe("no-right");
    expect(readRoom(s.db, ROOMS.harbour)?.equipment.actionSeconds).toBeUndefined();
  });
});
