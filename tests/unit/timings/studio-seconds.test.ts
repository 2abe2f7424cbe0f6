/** A studio's own seconds from its classes: right with many classes, careful with few, and open about its uncertainty. */
import { describe, expect, it } from "vitest";
import { seededRandom } from "#lib/order/random.ts";
import { studioSeconds, TIMED_PARTS, type TimedAction, type TimedChange } from "#lib/timings/studio-seconds.ts";
import { DEFAULT_ACTION_SECONDS } from "#lib/transitions/transitions.ts";

const TRUE: Readonly<Record<TimedAction, number>> = {
  ...DEFAULT_ACTION_SECONDS,
  springOn: 5,
  springOff: 3.5,
  base: 4,
  strapOn: 8,
};
const COMMON = ["springOn", "springOff", "carriageHome", "quarterTurn", "positionChange"] as const;

function changesOf(count: number, seed: number): TimedChange[] {
  const random = seededRandom(seed);
  return Array.from({ length: count }, () => {
    const actions = Object.fromEntries(
      COMMON.filter(() => random() < 0.5).map((a) => [a, 1 + Math.floor(random() * 2)]),
    );
    const exact = TIMED_PARTS.reduce((s, a) => s + (a === "base" ? 1 : (actions[a] ?? 0)) * TRUE[a], 0);
    return { actions, seconds: Math.max(0, exact + (random() + random() + random() - 1.5) * 3) };
  });
}
const rowOf = (fit: ReturnType<typeof studioSeconds>, action: TimedAction) => {
  const row = fit.rows.find((r) => r.action === action);
  if (!row) throw new Error(action);
  return row;
};

describe("a studio's own seconds", () => {
  it("are the usual ones without a class", () => {
    const fit = studioSeconds([], DEFAULT_ACTION_SECONDS);
    for (const row of fit.rows) expect([row.seconds, row.share]).toEqual([row.usual, 0]);
    expect(fit.changes).toBe(0);
  });

  it("approach the true ones with many classes, and stay the usual for actions never seen", () => {
    const fit = studioSeconds(changesOf(800, 1), DEFAULT_ACTION_SECONDS);
    for (const action of COMMON) expect(Math.abs(rowOf(fit, action).seconds - TRUE[action]), action).toBeLessThan(0.5);
    expect(rowOf(fit, "strapOn")).toMatchObject({ seconds: 4, seenIn: 0 });
    expect(fit.offOwn).toBeLessThan(fit.offUsual);
  });

  it("move a little after a few changes and more after many, and give their uncertainty", () => {
    const few = rowOf(studioSeconds(changesOf(6, 2), DEFAULT_ACTION_SECONDS), "springOn");
    const many = rowOf(studioSeconds(changesOf(300, 2), DEFAULT_ACTION_SECONDS), "springOn");
    expect(many.give).toBeLessThan(few.give / 2);
    expect(Math.abs(many.seconds - 5)).toBeLessThanOrEqual(Math.abs(few.seconds - 5));
  });

  it("are within two standard deviations of the truth about as often as they claim", () => {
    let held = 0;
    for (let seed = 10; seed < 60; seed++) {
      const row = rowOf(studioSeconds(changesOf(60, seed), DEFAULT_ACTION_SECONDS), "springOff");
      held += Number(Math.abs(row.seconds - TRUE.springOff) <= 2 * row.give + 0.05);
    }
    expect(held).toBeGreaterThanOrEqual(40);
  });

  it("are never negative, and ignore a change that nobody can have made in that time", () => {
    const quick = Array.from({ length: 50 }, (): TimedChange => ({ actions: { springOn: 1 }, seconds: 1.3 }));
    const absurd = [240, 36_000, 0, 1, -30, Number.NaN, Number.POSITIVE_INFINITY];
    const changes = [...quick, ...absurd.map((seconds) => ({ actions: { springOn: 1 }, seconds }))];
    const fit = studioSeconds(changes);
    expect([fit.changes, fit.leftOut]).toEqual([50, 7]);
    expect(fit).toMatchObject({ ...studioSeconds(quick), leftOut: 7 });
    for (const row of fit.rows) expect(row.seconds).toBeGreaterThanOrEqual(0);
  });

  it("give the share that comes from classes: none without any, the smaller part with two changes, nearly all with many", () => {
    const share = (count: number) => rowOf(studioSeconds(changesOf(count, 3)), "springOn").share;
    expect(share(0)).toBe(0);
    expect(share(3)).toBeGreaterThan(0);
    expect(share(3)).toBeLessThan(0.5);
    expect(share(500)).toBeGreaterThan(0.9);
  });

  it("are least squares with a pull of known strength, worked by hand for one action", () => {
    // Only base: n changes of 5 s, each give or take 0.35 of 4 s, pulled to 2 s give or take 0.8 s.
    // The answer is the mean of the two, weighted by how sure each is: (n 5 / 1.96 + 2 / 0.64) / (n / 1.96 + 1 / 0.64).
    for (const n of [1, 4, 10]) {
      const fit = studioSeconds(Array.from({ length: n }, () => ({ actions: {}, seconds: 5 })));
      const [known, own] = [1 / 0.64, n / 1.96];
      expect(rowOf(fit, "base").seconds).toBeCloseTo((own * 5 + known * 2) / (own + known), 0);
      expect(rowOf(fit, "base").give).toBeCloseTo(1 / Math.sqrt(own + known), 9);
      expect(rowOf(fit, "base").share).toBeCloseTo(own / (own + known), 9);
    }
  });
});
