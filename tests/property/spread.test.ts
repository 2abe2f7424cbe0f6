/** Lines spread over their time: in order, within their windows, and with the shortest possible longest silence. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { classClock } from "#lib/clock/clock.ts";
import { cueTrack } from "#lib/cues/cue-track.ts";
import { evenBegins, type LineGate } from "#lib/cues/spread.ts";
import { workWindow } from "#lib/cues/windows.ts";
import type { MoveItem, Plan, ScriptLine } from "#lib/plan/schema.ts";
import { spokenSeconds } from "#lib/talk/talk.ts";
import { cpuMs } from "#tests/support/cpu-time.ts";
import { samplePlan } from "../unit/card/sample-plan.ts";

/** Gates with a way through: each is opened around one placing that is in order. */
const ways = (most: number, longestGap: number) =>
  fc
    .array(
      fc.record({
        gap: fc.integer({ min: 0, max: longestGap }),
        length: fc.integer({ min: 1, max: 5 }),
        sooner: fc.integer({ min: 0, max: 8 }),
        later: fc.integer({ min: 0, max: 8 }),
      }),
      { minLength: 1, maxLength: most },
    )
    .chain((parts) => fc.record({ parts: fc.constant(parts), rest: fc.integer({ min: 0, max: longestGap }) }))
    .map(({ parts, rest }) => {
      let at = 0;
      const gates = parts.map(({ gap, length, sooner, later }): LineGate => {
        at += gap;
        const gate = { length, earliest: Math.max(0, at - sooner), latest: at + later };
        at += length;
        return gate;
      });
      return { gates, to: at + rest };
    });

/** All placings, one after the other; undefined when there is none. */
function shortestSilence(gates: readonly LineGate[], free: number, to: number): number | undefined {
  const [first, ...others] = gates;
  if (!first) return to - free;
  let best: number | undefined;
  for (let at = Math.max(free, first.earliest); at <= first.latest && at + first.length <= to; at++) {
    const rest = shortestSilence(others, at + first.length, to);
    if (rest === undefined) continue;
    const longest = Math.max(at - free, rest);
    if (best === undefined || longest < best) best = longest;
  }
  return best;
}

function longestSilence(gates: readonly LineGate[], begins: readonly number[], from: number, to: number): number {
  let free = from;
  const silences = begins.map((begin, n) => {
    const silence = begin - free;
    free = begin + (gates[n]?.length ?? 0);
    return silence;
  });
  return Math.max(...silences, to - free);
}

describe("spread lines", () => {
  test("keep their order and their gates, and no placing has a shorter longest silence", () => {
    let pinched = 0;
    fc.assert(
      fc.property(ways(5, 7), ({ gates, to }) => {
        const begins = evenBegins(gates, 0, to);
        let free = 0;
        for (const [n, gate] of gates.entries()) {
          const begin = begins[n] ?? Number.NaN;
          expect(begin).toBeGreaterThanOrEqual(Math.max(free, gate.earliest));
          expect(begin).toBeLessThanOrEqual(gate.latest);
          free = begin + gate.length;
        }
        expect(free).toBeLessThanOrEqual(to);
        const best = shortestSilence(gates, 0, to);
        expect(longestSilence(gates, begins, 0, to)).toBe(best);
        const silence = to - gates.reduce((sum, { length }) => sum + length, 0);
        pinched += Number((best ?? 0) > Math.ceil(silence / (gates.length + 1)));
      }),
      { numRuns: 500 },
    );
    expect(pinched, "in many of the cases windows do not allow even silences").toBeGreaterThan(100);
  });

  test("move little when a line grows a little, so nothing jumps while somebody types", () => {
    fc.assert(
      fc.property(ways(12, 100), fc.nat(), fc.integer({ min: 1, max: 5 }), ({ gates, to }, which, more) => {
        const n = which % gates.length;
        const grown = gates.map((gate, k) => (k === n ? { ...gate, length: gate.length + more } : gate));
        // Later gates move out of its way, so that there is still a way through.
        const roomy = grown.map((gate, k) =>
          k > n ? { ...gate, earliest: gate.earliest + more, latest: gate.latest + more } : gate,
        );
        const before = evenBegins(gates, 0, to + more);
        const after = evenBegins(roomy, 0, to + more);
        for (const [k, begin] of after.entries())
          expect(Math.abs(begin - (before[k] ?? Number.NaN))).toBeLessThanOrEqual(2 * more + 1);
      }),
      { numRuns: 300 },
    );
  });

  test("are quick for more lines than a plan may have", () => {
    const gates = Array.from(
      { length: 2000 },
      (_, n): LineGate => ({ length: 3, earliest: n % 7, latest: 140_000 + n }),
    );
    expect(cpuMs(() => expect(evenBegins(gates, 0, 144_000)).toHaveLength(2000))).toBeLessThan(500);
  });
});

/** The same question asked of a whole class: is there a placing in which no silence is longer than so many tenths? */
function canBeSaid(gates: readonly LineGate[], from: number, to: number, silence: number): boolean {
  let [soonest, latest] = [from, from];
  for (const gate of gates) {
    soonest = Math.max(soonest, gate.earliest) + gate.length;
    latest = Math.min(latest + silence, gate.latest) + gate.length;
    if (soonest > latest) return false;
  }
  return soonest <= to && latest + silence >= to;
}

test("the cue track leaves the shortest possible longest silence up to the heads-up", () => {
  const words = fc.constantFrom("hips", "long neck", "slow and even", "keep the shoulders wide", "soft knees");
  const line: fc.Arbitrary<ScriptLine> = fc.record({
    kind: fc.constantFrom("breath", "form", "focus", "easier", "harder"),
    text: fc.array(words, { minLength: 1, maxLength: 6 }).map((some) => some.join(", ")),
  });
  const scripts = fc.record({
    seconds: fc.integer({ min: 40, max: 180 }),
    script: fc.array(line, { minLength: 1, maxLength: 6 }),
  });
  let tried = 0;
  fc.assert(
    fc.property(scripts, ({ seconds, script }) => {
      const item: MoveItem = { id: "a", kind: "move", move: "pike", side: "both", seconds, springs: {}, script };
      const plan: Plan = { ...samplePlan(), items: [item] };
      const { cues, dropped } = cueTrack(plan);
      const row = classClock(plan).rows[0];
      const call = cues.find(({ kind }) => kind === "heads-up");
      const said = cues.slice(0, call ? cues.indexOf(call) : 0);
      if (!row || !call || dropped.length > 0 || said.length < script.length) return;
      tried++;
      const tenths = (at: number) => Math.round(10 * at);
      const gates = said.map((cue): LineGate => {
        const window = workWindow(plan, { item, row }, cue.kind);
        // Not from the cue, whose end is rounded to a tenth.
        const length = Math.ceil(10 * Math.max(0.5, spokenSeconds(plan, cue.text)) - 1e-6);
        return { length, earliest: tenths(window.from), latest: Math.floor(10 * window.to + 1e-6) - length };
      });
      const [from, to] = [tenths(row.start), tenths(call.from)];
      const is = longestSilence(
        gates,
        said.map((cue) => tenths(cue.from)),
        from,
        to,
      );
      expect(canBeSaid(gates, from, to, is)).toBe(true);
      expect(canBeSaid(gates, from, to, is - 1)).toBe(false);
    }),
    { numRuns: 150 },
  );
  expect(tried).toBeGreaterThan(75);
});
