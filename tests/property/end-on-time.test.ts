/** A late class ends on time or says why not: 1,000 random classes, moments and delays. */
import { describe, expect, it } from "vitest";
import { classClock } from "#lib/clock/clock.ts";
import { endOnTime } from "#lib/floor/end-on-time.ts";
import { retimedPlan } from "#lib/floor/retimed-plan.ts";
import { seededRandom } from "#lib/order/random.ts";
import { moveItems, moveOf, sidePairs } from "#lib/plan/lookup.ts";
import type { MoveItem, Plan } from "#lib/plan/schema.ts";
import { samplePlan } from "../unit/card/sample-plan.ts";

const RUNS = 1000;

function randomClass(random: () => number): Plan {
  const base = samplePlan();
  const pick = <T>(list: readonly T[]): T => list[Math.floor(random() * list.length)] as T;
  const items: Plan["items"] = [];
  for (let n = 0; n < 3 + random() * 9; n++) {
    const id = `i${n}`;
    if (random() < 0.1) {
      items.push({ id, kind: "pause", seconds: pick([10, 20]) });
      continue;
    }
    const bare: MoveItem = {
      id,
      kind: "move",
      move: "pike",
      side: "both",
      seconds: pick([30, 45, 60, 90]),
      springs: { light: pick([0, 1, 2]) },
      ...(random() < 0.5 ? { transitionSeconds: pick([0, 6, 12]) } : {}),
      ...(random() < 0.3 ? { range: [pick([20, 32.5]), pick([60, 100])] as [number, number] } : {}),
      ...(random() < 0.15 ? { locked: true } : {}),
    };
    if (random() < 0.4) {
      items.push({ ...bare, move: "row", side: "left" }, { ...bare, id: `${id}r`, move: "row", side: "right" });
    } else items.push(bare);
  }
  return { ...base, items };
}

const shortestOf = (plan: Plan, item: MoveItem): number =>
  (item.range ?? moveOf(plan, item)?.seconds ?? [item.seconds / 2])[0];

describe("end on time", () => {
  it(`holds for ${RUNS} random delays`, () => {
    const random = seededRandom(4711);
    const seen = { onTime: 0, droppedSome: 0, impossible: 0, early: 0 };
    for (let run = 0; run < RUNS; run++) {
      const plan = randomClass(random);
      const { rows, total } = classClock(plan);
      const position = Math.round(random() * total * 10) / 10;
      const late = Math.round((random() * 500 - 60) * 10) / 10;
      const secondsLeft = total - position - late;
      const answer = endOnTime(plan, position, secondsLeft);
      const say = `run ${run}, at ${position} of ${total}, ${late} late`;
      if (!answer.possible) {
        seen.impossible++;
        expect(answer.overBy, say).toBeGreaterThan(0);
        continue;
      }
      seen.onTime++;
      seen.early += Number(late < 0);
      seen.droppedSome += Number(answer.dropped.length > 0);
      const after = retimedPlan(plan, answer);
      const clock = classClock(after);
      expect(Math.abs(clock.total - position - secondsLeft), say).toBeLessThan(0.051);
      for (const row of rows.filter((r) => r.end <= position)) {
        expect(
          clock.rows.find((r) => r.item === row.item),
          say,
        ).toEqual(row);
      }
      const original = new Map(moveItems(plan).map((item) => [item.id, item]));
      for (const item of moveItems(after)) {
        const was = original.get(item.id) as MoveItem;
        if (item.seconds !== was.seconds) expect(item.seconds, say).toBeGreaterThanOrEqual(shortestOf(plan, was));
      }
      for (const { left, right } of sidePairs(plan)) {
        if (!left || !right) continue;
        expect(answer.dropped.includes(left.id), say).toBe(answer.dropped.includes(right.id));
        const now = moveItems(after).filter((item) => item.id === left.id || item.id === right.id);
        const even = now.length < 2 || now[0]?.seconds === now[1]?.seconds;
        if (!even)
          expect(
            [left.id, right.id].some((id) => answer.uneven.includes(id)),
            say,
          ).toBe(true);
      }
    }
    expect(seen.onTime).toBeGreaterThan(RUNS / 2);
    expect(seen.droppedSome).toBeGreaterThan(20);
    expect(seen.early).toBeGreaterThan(20);
    expect(seen.impossible).toBeGreaterThan(5);
  });

  it("leaves a class that is on time as it is", () => {
    const plan = samplePlan();
    const { total } = classClock(plan);
    expect(endOnTime(plan, 50, total - 50)).toMatchObject({
      possible: true,
      changed: [],
      dropped: [],
      closingSeconds: 40,
    });
  });

  it("forty seconds late: less work for all, both sides alike, the closing kept", () => {
    const plan = samplePlan();
    const { total } = classClock(plan);
    const answer = endOnTime(plan, 10, total - 10 - 40);
    expect(answer).toMatchObject({ possible: true, dropped: [], uneven: [], closingSeconds: 40 });
    if (!answer.possible) return;
    const to = Object.fromEntries(answer.changed.map((c) => [c.item, c.to]));
    expect(to["row-left"]).toBe(to["row-right"]);
    expect(answer.changed.reduce((sum, c) => sum + c.from - c.to, 0)).toBe(40);
  });

  it("gives the second side of a pair what the first side got", () => {
    const plan = samplePlan();
    const { rows, total } = classClock(plan);
    const done = rows.find((row) => row.item === "row-left");
    const position = (done?.end ?? 0) + 1;
    const answer = endOnTime(plan, position, total - position - 1);
    // The only work left is the right side: it stays equal as long as anything else can give.
    expect(answer).toMatchObject({ possible: true });
    if (answer.possible) expect(answer.uneven.length + Number(answer.closingSeconds < 40)).toBeGreaterThan(0);
  });
});
