/** The class log: planned and real seconds of every step, worked by hand; and for any log all seconds add up. */
import { describe, expect, test } from "vitest";
import { buildCard } from "#lib/card/card.ts";
import { actEvent, endOnTimeAt, retimeEvent } from "#lib/floor/acts.ts";
import { classLogUntil } from "#lib/floor/class-log.ts";
import { classLogSchema } from "#lib/floor/class-log-schema.ts";
import { extension } from "#lib/floor/extension.ts";
import type { FloorLog } from "#lib/floor/log.ts";
import { Dice } from "#tests/support/dice.ts";
import { samplePlan } from "../card/sample-plan.ts";

const card = buildCard({
  studio: { name: "Tholepin Strength", town: "Port Ellery" },
  planId: "rows",
  number: 1,
  room: { id: "harbour", name: "Harbour room" },
  plan: samplePlan(),
  issuedAt: 0,
  expiresAt: 86_400_000,
});
const T0 = 1_000_000;
const at = (seconds: number) => T0 + seconds * 1000;
const started: FloorLog = [{ type: "start", at: T0 }];
const of = { sessionId: "a".repeat(32), kind: "class", clock: { mono: T0, wall: Date.UTC(2026, 4, 4, 18) } } as const;
const logAt = (log: FloorLog, seconds: number) => {
  const made = classLogUntil(card, log, at(seconds), of);
  if (!made) throw new Error("the class has begun");
  return made;
};
const row = (log: FloorLog, seconds: number, phase: string, item: string | null) =>
  logAt(log, seconds).rows.find((r) => r.phase === phase && r.item === item);

// Opening 0-30, pike 30-90, pause 90-110, change 110-130, left 130-175, change 175-180, right 180-225, closing 225-265.
describe("one class", () => {
  test("has no log before it begins", () => {
    expect(classLogUntil(card, [], at(10), of)).toBeNull();
  });

  test("as planned: every step took its time, up to the end and no further", () => {
    const log = logAt(started, 500);
    expect(log).toMatchObject({ startedAt: "2026-05-04T18:00:00.000Z", elapsed: 265, whole: true });
    expect(log.rows.map(({ phase, planned, given, took, held }) => [phase, planned, given, took, held])).toEqual([
      ["opening", 30, 30, 30, 0],
      ["work", 60, 60, 60, 0],
      ["pause", 20, 20, 20, 0],
      ["change", 20, 20, 20, 0],
      ["work", 45, 45, 45, 0],
      ["change", 5, 5, 5, 0],
      ["work", 45, 45, 45, 0],
      ["closing", 40, 40, 40, 0],
    ]);
    expect(classLogSchema.parse(log)).toEqual(log);
  });

  test("a hold counts where it was made; a class ended halfway is not whole", () => {
    const held: FloorLog = [...started, { type: "hold", at: at(50) }, { type: "resume", at: at(75) }];
    expect(row(held, 100, "work", "pike-1")).toEqual({
      phase: "work",
      item: "pike-1",
      planned: 60,
      given: 60,
      took: 45,
      held: 25,
    });
    expect(logAt([...held, { type: "end", at: at(100) }], 900)).toMatchObject({ elapsed: 100, whole: false });
  });

  test("skipped, gone back, made longer", () => {
    const skipped: FloorLog = [...started, actEvent(card, started, "next", at(40))];
    expect(row(skipped, 60, "work", "pike-1")).toMatchObject({ planned: 60, took: 10 });
    const back: FloorLog = [...started, actEvent(card, started, "back", at(80))];
    expect(row(back, 300, "work", "pike-1")).toMatchObject({ planned: 60, given: 60, took: 110 });
    const made = extension(card, started, 15, at(40));
    if (!made) throw new Error("a move can be made longer");
    expect(row([...started, made.event], 300, "work", "pike-1")).toMatchObject({ planned: 60, given: 75, took: 75 });
  });
});

test("whatever happens, the seconds of all rows add up to the time that passed, within a tenth per row", () => {
  const dice = new Dice(20261125);
  for (let run = 0; run < 300; run++) {
    let log: FloorLog = started;
    let now = 0;
    let held = false;
    for (let act = dice.upTo(8); act > 0; act--) {
      now += 1 + dice.upTo(40);
      const type = dice.one(["hold", "next", "back", "longer", "on-time"] as const);
      if (type === "hold") {
        log = [...log, { type: held ? "resume" : "hold", at: at(now) }];
        held = !held;
      } else if (type === "longer") {
        const made = extension(card, log, 15, at(now));
        if (made) log = [...log, made.event];
      } else if (type === "on-time") {
        const answer = endOnTimeAt(card, log, at(now));
        if (answer.possible) log = [...log, retimeEvent(answer, at(now))];
      } else log = [...log, actEvent(card, log, type, at(now))];
    }
    const made = logAt(log, now);
    const sum = made.rows.reduce((s, r) => s + r.took + r.held, 0);
    expect(made.elapsed).toBeCloseTo(sum, 6);
    if (!made.whole) expect(Math.abs(sum - now)).toBeLessThan(0.05 * made.rows.length + 1e-6);
    expect(classLogSchema.safeParse(made).success).toBe(true);
  }
});
