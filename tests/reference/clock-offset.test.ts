/** The offset of another clock: RFC 5905 section 8, the worked cases of its errata note and of a published example. */
import { readFileSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { bestOffset, type Exchange, exchangeOffset } from "#lib/floor/clock-offset.ts";

interface Published {
  readonly cases: readonly { T1: number; T2: number; T3: number; T4: number; offset: number; delay: number }[];
}
const file = new URL("../fixtures/rfc5905-clock-offset.json", import.meta.url);
const published: Published = JSON.parse(readFileSync(file, "utf8"));

describe("clock offset", () => {
  it.each(published.cases)("worked case %#", ({ T1, T2, T3, T4, offset, delay }) => {
    const answer = exchangeOffset({ t1: T1, t2: T2, t3: T3, t4: T4 });
    expect(answer.offset).toBeCloseTo(offset, 9);
    expect(answer.delay).toBeCloseTo(delay, 9);
  });

  it("is never wrong by more than half of the delay, however asymmetric", () => {
    const ms = fc.integer({ min: 0, max: 2000 });
    fc.assert(
      fc.property(fc.integer({ min: -1e6, max: 1e6 }), ms, ms, ms, (truth, there, thinking, back) => {
        const t1 = 5000;
        const t2 = t1 + there + truth;
        const t3 = t2 + thinking;
        const { offset, delay } = exchangeOffset({ t1, t2, t3, t4: t3 - truth + back });
        expect(Math.abs(offset - truth)).toBeLessThanOrEqual(delay / 2);
      }),
    );
  });

  it("takes the exchange with the least delay among the last eight", () => {
    const exchange = (delay: number, offset: number): Exchange => ({
      t1: 0,
      t2: delay / 2 + offset,
      t3: delay / 2 + offset,
      t4: delay,
    });
    expect(bestOffset([])).toBeNull();
    expect(bestOffset([exchange(80, 3), exchange(10, 5), exchange(200, 90)])).toEqual({ offset: 5, delay: 10 });
    const old = [exchange(1, 77), ...Array.from({ length: 8 }, (_, n) => exchange(50 - n, n))];
    expect(bestOffset(old)).toEqual({ offset: 7, delay: 43 });
  });
});
