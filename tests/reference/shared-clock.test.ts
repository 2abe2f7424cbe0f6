/**
 * The server's clock on a device, over a simulated network. It must keep the bound of RFC 5905 (section 8: an
 * exchange is wrong by at most half of its delay), and must not jump while two screens can be compared.
 */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Exchange } from "#lib/floor/clock-offset.ts";
import {
  afterExchange,
  clockOffsetAt,
  firstClock,
  type SharedClock,
  SLIDE,
  STEP_MS,
  studioTime,
} from "#lib/line/shared-clock.ts";

/** One exchange begun at `at` by a device whose clock is `truth` ms behind the server's. */
const exchange = (at: number, truth: number, there: number, back: number, thinking = 0.2): Exchange => ({
  t1: at,
  t2: at + there + truth,
  t3: at + there + thinking + truth,
  t4: at + there + thinking + back,
});
const wayArb = fc.double({ min: 0.01, max: 100, noNaN: true });
const waysArb = fc.array(fc.tuple(wayArb, wayArb), { minLength: 12, maxLength: 40 });
const truthArb = fc.double({ min: -1e7, max: 1e7, noNaN: true });

describe("over a network of up to 100 ms each way, however asymmetric", () => {
  test("the clock is never wrong by more than half of the least delay of the last eight, once it has slid there", () => {
    fc.assert(
      fc.property(truthArb, waysArb, (truth, ways) => {
        const all = ways.map(([there, back], n) => exchange(n * 3000, truth, there, back));
        let clock = firstClock(all.slice(0, 8)) as SharedClock;
        const half = (of: readonly Exchange[]) => Math.min(...of.map((e) => e.t4 - e.t1 - (e.t3 - e.t2))) / 2;
        expect(Math.abs(clockOffsetAt(clock, all[7]?.t4 ?? 0) - truth)).toBeLessThanOrEqual(
          half(all.slice(0, 8)) + 1e-5,
        );
        all.slice(8).forEach((one, n) => {
          clock = afterExchange(clock, one) as SharedClock;
          expect(Math.abs(clock.target - truth)).toBeLessThanOrEqual(half(all.slice(n + 1, n + 9)) + 1e-5);
          expect(Math.abs(studioTime(clock, one.t4 + 60_000) - (one.t4 + 60_000 + truth))).toBeLessThanOrEqual(100);
        });
      }),
    );
  });

  test("between exchanges it slides: never back, never faster than 5 ms a second", () => {
    fc.assert(
      fc.property(truthArb, waysArb, (truth, ways) => {
        let clock = firstClock(
          ways.slice(0, 8).map(([there, back], n) => exchange(n * 50, truth, there, back)),
        ) as SharedClock;
        let [local, shown] = [10_000, studioTime(clock, 10_000)];
        ways.slice(8).forEach(([there, back], n) => {
          clock = afterExchange(clock, exchange(10_000 + n * 3000, truth, there, back)) as SharedClock;
          for (const at of [0, 1, 100, 999, 2500].map((ms) => 10_201 + n * 3000 + ms)) {
            const gone = at - local;
            const went = studioTime(clock, at) - shown;
            expect(Math.abs(went - gone)).toBeLessThanOrEqual(SLIDE * gone + 1e-5);
            [local, shown] = [at, studioTime(clock, at)];
          }
        });
      }),
    );
  });
});

describe("worked by hand", () => {
  const even = (at: number, truth: number) => exchange(at, truth, 10, 10, 0);
  const first = firstClock(Array.from({ length: 8 }, (_, n) => even(n * 20, 500))) as SharedClock;

  test("two screens that are wrong in opposite directions are no further apart than their delays allow", () => {
    // All of the delay in one direction: the worst case, wrong by exactly half of the delay.
    const late = firstClock([exchange(0, 0, 100, 0, 0)]) as SharedClock;
    const early = firstClock([exchange(0, 0, 0, 100, 0)]) as SharedClock;
    expect(clockOffsetAt(late, 1000)).toBe(50);
    expect(clockOffsetAt(early, 1000)).toBe(-50);
  });

  test("a better offset of 5 ms is reached after one second, half of it after half a second", () => {
    // 1 ms each way: preferred to those of 10 ms.
    const better = afterExchange(first, exchange(1000, 505, 1, 1, 0)) as SharedClock;
    expect(clockOffsetAt(better, 1002)).toBe(500);
    expect(clockOffsetAt(better, 1502)).toBeCloseTo(502.5, 9);
    expect(clockOffsetAt(better, 2002)).toBeCloseTo(505, 9);
    expect(clockOffsetAt(better, 60_000)).toBe(505);
  });

  test("a device that slept for a minute is right at once", () => {
    const woken = afterExchange(first, even(1000, 60_500)) as SharedClock;
    expect(woken.exchanges).toHaveLength(1);
    expect(clockOffsetAt(woken, 1020)).toBe(60_500);
    const little = afterExchange(first, even(1000, 500 + STEP_MS - 1)) as SharedClock;
    expect(clockOffsetAt(little, 1020)).toBe(500);
    expect(little.target).toBe(500 + STEP_MS - 1);
  });

  test("an answer before its question is ignored", () => {
    expect(afterExchange(first, { t1: 10, t2: 0, t3: 0, t4: 5 })).toBe(first);
    expect(firstClock([{ t1: 10, t2: 0, t3: 0, t4: 5 }])).toBeNull();
  });

  test("after an hour offline on clocks 100 ppm apart, the 360 ms are jumped when the line is back", () => {
    const back = afterExchange(first, even(3_600_000, 860)) as SharedClock;
    expect(clockOffsetAt(back, 3_600_020)).toBe(860);
    // Twenty minutes: 120 ms, reached by sliding for 24 s.
    const soon = afterExchange(first, even(1_200_000, 620)) as SharedClock;
    expect(clockOffsetAt(soon, 1_200_020)).toBe(500);
    expect(clockOffsetAt(soon, 1_224_020)).toBeCloseTo(620, 9);
  });
});
