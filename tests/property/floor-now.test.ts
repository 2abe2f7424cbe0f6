/** Re-timings on the floor, mixed with holds, extensions, skips and going back in any order. */
import { describe, expect, test } from "vitest";
import { buildCard, type Card } from "#lib/card/card.ts";
import { endOnTime } from "#lib/floor/end-on-time.ts";
import { earlierStart, type FloorEvent, type FloorLog, nextStart } from "#lib/floor/log.ts";
import { floorNow, floorView, lastTouch, latenessAt, positionAt } from "#lib/floor/now.ts";
import { seededRandom } from "#lib/order/random.ts";
import { moveItems, moveOf, sidePairs } from "#lib/plan/lookup.ts";
import type { MoveItem, Plan } from "#lib/plan/schema.ts";
import { often } from "#tests/support/long.ts";
import { samplePlan } from "../unit/card/sample-plan.ts";

const T0 = 1_000_000;
const RUNS = often(50, 150);

function cardOf(plan: Plan): Card {
  return buildCard({
    studio: { name: "Tholepin Strength", town: "Port Ellery" },
    planId: "rows",
    number: 1,
    room: { id: "harbour", name: "Harbour room" },
    plan,
    issuedAt: 0,
    expiresAt: 86_400_000,
  });
}

function longerPlan(random: () => number): Plan {
  const base = samplePlan();
  const [pike, , , left, right] = base.items.filter((item) => item.kind !== "heading" || item.id === "trunk").slice(1);
  const items = [...base.items];
  for (let n = 0; n < 2 + random() * 4; n++) {
    const seconds = 30 + 5 * Math.floor(random() * 8);
    for (const item of random() < 0.5 ? [left, right] : [pike]) {
      if (item?.kind === "move") items.push({ ...item, id: `${item.id}-${n}`, seconds });
    }
  }
  return { ...base, items };
}

/** One random act of a coach, as the page would log it. */
function randomEvent(card: Card, log: FloorLog, at: number, random: () => number): FloorEvent[] {
  const { plan, steps, clock } = floorNow(card, log);
  const { position, held, startedAt } = positionAt(card, log, at);
  const { closingSeconds = 0 } = plan;
  const act = random();
  if (held) return [{ type: "resume", at }];
  if (act < 0.2) return [{ type: "hold", at }];
  if (act < 0.35) return [{ type: "next", at, to: nextStart(steps, position) }];
  if (act < 0.45) return [{ type: "back", at, to: earlierStart(steps, position) }];
  if (act < 0.6) {
    const row = clock.rows.find((r) => r.start <= position && position < r.end);
    if (!row) return [];
    const to = row.end - row.start + 15;
    return [{ type: "retime", at, changed: [{ item: row.item, to }], dropped: [], closingSeconds }];
  }
  if (act < 0.7) return [{ type: "undo-retime", at }];
  const answer = endOnTime(plan, position, card.clock.total - (at - (startedAt ?? at)) / 1000);
  if (!answer.possible) return [];
  const { changed, dropped, closingSeconds: closing } = answer;
  return [{ type: "retime", at, changed, dropped, closingSeconds: closing }];
}

const doneRows = (card: Card, log: FloorLog, position: number) =>
  floorNow(card, log).clock.rows.filter((row) => row.end <= position && row.end > row.start);

describe(`${RUNS} random classes, held, extended, skipped, gone back in and re-timed`, () => {
  test("[INV-23] a re-timing never changes the past, and the second shown never jumps", () => {
    const random = seededRandom(99);
    let retimed = 0;
    for (let run = 0; run < RUNS; run++) {
      const card = cardOf(longerPlan(random));
      let log: FloorLog = [{ type: "start", at: T0 }];
      let at = T0;
      for (let n = 0; n < 8; n++) {
        at += Math.floor(random() * 60_000);
        const events = randomEvent(card, log, at, random);
        const is = positionAt(card, log, at);
        const after: FloorLog = [...log, ...events];
        const say = `run ${run}, event ${n}: ${JSON.stringify(events)}`;
        if (events.some((event) => event.type === "retime" || event.type === "undo-retime")) {
          retimed++;
          expect(positionAt(card, after, at).position, say).toBeCloseTo(is.position, 9);
          expect(doneRows(card, after, is.position), say).toEqual(doneRows(card, log, is.position));
          const behind = (l: FloorLog) => floorNow(card, l).cues.filter((cue) => cue.to <= is.position);
          if (events[0]?.type === "retime") expect(behind(after), say).toEqual(behind(log));
          const [a, b] = [floorView(card, log, at), floorView(card, after, at)];
          if (a.phase !== "done" && b.phase !== "done")
            expect([b.phase, b.item?.id], say).toEqual([a.phase, a.item?.id]);
        }
        // The past is fixed: views of earlier moments do not depend on what came later.
        expect(positionAt(card, after, at - 1), say).toEqual(positionAt(card, log, at - 1));
        log = after;
      }
      for (const { cues } of [floorNow(card, log)]) {
        for (const [n, cue] of cues.entries()) expect(cue.from).toBeGreaterThanOrEqual((cues[n - 1]?.to ?? 0) - 0.051);
      }
    }
    expect(retimed).toBeGreaterThan(RUNS);
  });

  test("after End on time the class ends within a second of its due end, or the reason is given", () => {
    const random = seededRandom(7);
    const seen = { onTime: 0, impossible: 0, dropped: 0 };
    for (let run = 0; run < RUNS; run++) {
      const card = cardOf(longerPlan(random));
      let log: FloorLog = [{ type: "start", at: T0 }];
      let at = T0;
      for (let n = 0; n < random() * 4; n++) {
        at += Math.floor(random() * 45_000);
        log = [...log, ...randomEvent(card, log, at, random)];
      }
      const wait = 1 + Math.floor(random() * 300_000);
      log = [...log, { type: "hold", at: at + 1 }];
      at += wait;
      const { position, held } = positionAt(card, log, at);
      if (floorView(card, log, at).phase === "done") continue;
      const before = floorNow(card, log).plan;
      const answer = endOnTime(before, position, card.clock.total - (at - T0) / 1000);
      const say = `run ${run}, ${JSON.stringify(log)}`;
      if (!answer.possible) {
        seen.impossible++;
        expect(answer.overBy, say).toBeGreaterThan(0);
        continue;
      }
      const { changed, dropped, closingSeconds } = answer;
      const after: FloorLog = [
        ...log,
        { type: "retime", at, changed, dropped, closingSeconds },
        ...(held ? [{ type: "resume" as const, at }] : []),
      ];
      expect(Math.abs(latenessAt(card, after, at)), say).toBeLessThan(1);
      const due = T0 + card.clock.total * 1000;
      expect(floorView(card, after, due + 1000).phase, say).toBe("done");
      expect(floorView(card, after, due - 1100).phase, say).not.toBe("done");
      seen.onTime++;
      seen.dropped += Number(dropped.length > 0);
      const now = floorNow(card, after).plan;
      const was = new Map(moveItems(before).map((item) => [item.id, item]));
      for (const item of moveItems(now)) {
        if (item.seconds < (was.get(item.id)?.seconds ?? 0)) {
          expect(item.seconds, say).toBeGreaterThanOrEqual(shortest(now, item));
        }
      }
      for (const { left, right } of sidePairs(before)) {
        if (left && right) expect(dropped.includes(left.id), say).toBe(dropped.includes(right.id));
      }
    }
    expect(seen.onTime).toBeGreaterThan(RUNS / 3);
    expect(seen.impossible).toBeGreaterThan(often(0, 1));
    expect(seen.dropped).toBeGreaterThan(often(0, 3));
  });
});

const shortest = (plan: Plan, item: MoveItem) => (item.range ?? moveOf(plan, item)?.seconds ?? [0])[0];

describe("worked by hand", () => {
  // Opening 0-30, pike 30-90, pause 90-110, change 110-130, left 130-175, change 175-180, right 180-225, closing 225-265.
  const card = cardOf(samplePlan());
  const started: FloorEvent = { type: "start", at: T0 };
  const longer = (at: number): FloorEvent => ({
    type: "retime",
    at: T0 + at * 1000,
    changed: [{ item: "pike-1", to: 75 }],
    dropped: [],
    closingSeconds: 40,
  });

  test("fifteen seconds more: the item ends later, the class is fifteen late", () => {
    const log = [started, longer(60)];
    expect(floorView(card, log, T0 + 59_000)).toMatchObject({ secondsLeft: 31, lateBy: 0 });
    expect(floorView(card, log, T0 + 61_000)).toMatchObject({ secondsLeft: 44, lateBy: 15 });
    expect(floorView(card, log, T0 + 104_000)).toMatchObject({ phase: "work", secondsLeft: 1 });
  });

  test("can be undone in the same item, but not when that would move the class to another", () => {
    const log = [started, longer(60)];
    expect(lastTouch(card, log, T0 + 70_000)).toMatchObject({ type: "retime" });
    expect(lastTouch(card, log, T0 + 95_000)).toBeNull();
    // "undo-retime" is found in logs of an earlier version.
    for (const type of ["undo", "undo-retime"] as const) {
      const undone: FloorLog = [...log, { type, at: T0 + 70_000 }];
      expect(floorView(card, undone, T0 + 71_000)).toMatchObject({ secondsLeft: 19, lateBy: 0 });
      const late: FloorLog = [...log, { type, at: T0 + 95_000 }];
      expect(floorNow(card, late)).toBe(floorNow(card, log));
    }
  });

  test("a later re-timing does not change where earlier next and back led", () => {
    const log: FloorLog = [started, { type: "next", at: T0 + 40_000, to: 90 }, longer(45)];
    // The pike is over, so it does not change.
    expect(floorView(card, log, T0 + 50_000)).toMatchObject({ phase: "pause", secondsLeft: 10 });
    const older: FloorLog = [started, longer(35), { type: "next", at: T0 + 40_000 }];
    expect(positionAt(card, older, T0 + 40_000).position).toBe(105);
  });

  test("a pair that is left out is gone; the item being changed into stays whatever an event says", () => {
    const drop = (at: number): FloorLog => [
      started,
      { type: "retime", at: T0 + at * 1000, changed: [], dropped: ["row-left", "row-right"], closingSeconds: 40 },
    ];
    expect(floorNow(card, drop(60)).cls.order).toEqual(["pike-1", "rest"]);
    expect(floorNow(card, drop(115)).cls.order).toEqual(["pike-1", "rest", "row-left"]);
  });

  test("asking again returns the same object, also for another log with the same re-timings", () => {
    const log = [started, longer(60)];
    expect(floorNow(card, log)).toBe(floorNow(card, [...log, { type: "hold", at: T0 + 61_000 }]));
    expect(floorNow(card, [started])).toBe(floorNow(card, []));
    expect(floorNow(card, []).cues).toBe(card.cues);
  });
});
