/** Which lines are said: never two at once, never outside a window, and no other choice loses less. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { oneVoice } from "#lib/cues/one-voice.ts";
import { earliestBegins, latestBegins, type Spoken } from "#lib/cues/said-order.ts";

const line = fc.record({
  length: fc.integer({ min: 1, max: 60 }),
  earliest: fc.integer({ min: 0, max: 150 }),
  window: fc.integer({ min: 5, max: 200 }),
  worth: fc.constantFrom(100, 101, 102, 104, 106, 110, 10_000),
  waits: fc.boolean(),
});

/** Some lines wait for the one before them, as lines of one kind do. */
const scripts = (min: number, max: number) =>
  fc.array(line, { minLength: min, maxLength: max }).map((drawn): Spoken[] =>
    drawn.map(({ window, waits, ...rest }, n) => ({
      ...rest,
      latest: rest.earliest + window,
      after: waits && n > 0 ? [n - 1] : [],
    })),
  );

const lost = (lines: readonly Spoken[], said: readonly number[]): number =>
  lines.reduce((sum, { worth }, n) => sum + (said.includes(n) ? 0 : worth), 0);

/** The least loss of any order of any set of lines, by trying them all. */
function bruteLoss(lines: readonly Spoken[]): number {
  let best = Number.POSITIVE_INFINITY;
  const tryFrom = (said: readonly number[], free: number): void => {
    best = Math.min(best, lost(lines, said));
    for (const [n, next] of lines.entries()) {
      if (said.includes(n)) continue;
      if (said.some((other) => lines[other]?.after.includes(n))) continue;
      const over = Math.max(free, next.earliest) + next.length;
      if (over <= next.latest) tryFrom([...said, n], over);
    }
  };
  tryFrom([], Number.NEGATIVE_INFINITY);
  return best;
}

/** Among sets that lose least, the one with the earlier lines: the one that has the first line in which two sets differ. */
function firstOfBest(lines: readonly Spoken[]): number[] {
  const sets: number[][] = [];
  const tryFrom = (said: readonly number[], free: number): void => {
    sets.push([...said].sort((a, b) => a - b));
    for (const [n, next] of lines.entries()) {
      if (said.includes(n) || said.some((other) => lines[other]?.after.includes(n))) continue;
      const over = Math.max(free, next.earliest) + next.length;
      if (over <= next.latest) tryFrom([...said, n], over);
    }
  };
  tryFrom([], Number.NEGATIVE_INFINITY);
  const least = Math.min(...sets.map((said) => lost(lines, said)));
  const isSaid = (said: readonly number[]) => lines.map((_, n) => (said.includes(n) ? "0" : "1")).join("");
  const best = sets.filter((said) => lost(lines, said) === least).sort((a, b) => (isSaid(a) < isSaid(b) ? -1 : 1));
  return best[0] ?? [];
}

describe("one voice", () => {
  test("among equal choices says the earlier lines", () => {
    fc.assert(
      fc.property(scripts(3, 6), (lines) => {
        // Lines of equal worth, so that most choices have ties.
        const alike = lines.map((one) => ({ ...one, worth: 100 }));
        const { said, aside } = oneVoice(alike);
        if (aside.length > 0) expect([...said].sort((a, b) => a - b)).toEqual(firstOfBest(alike));
      }),
      { seed: 17, numRuns: 300 },
    );
  });

  test("loses no more than any other order of any choice of up to nine lines", () => {
    let tight = 0;
    fc.assert(
      fc.property(scripts(0, 7), (lines) => {
        const { said, aside } = oneVoice(lines);
        tight += Number(aside.length > 0);
        expect(lost(lines, said)).toBe(bruteLoss(lines));
      }),
      { numRuns: 400 },
    );
    fc.assert(
      fc.property(scripts(8, 9), (lines) => {
        expect(lost(lines, oneVoice(lines).said)).toBe(bruteLoss(lines));
      }),
      { numRuns: 40 },
    );
    expect(tight, "most of the scripts tried do not fit").toBeGreaterThan(100);
  });

  test("keeps every window and every order, whether lines are said early or late, for any number of lines", () => {
    fc.assert(
      fc.property(scripts(0, 30), (lines) => {
        const { said, aside } = oneVoice(lines);
        expect([...said, ...aside.map((a) => a.line)].sort((a, b) => a - b)).toEqual(lines.map((_, n) => n));
        for (const begins of [earliestBegins(lines, said), latestBegins(lines, said)]) {
          said.forEach((place, n) => {
            const { length, earliest, latest, after } = lines[place] as Spoken;
            const begin = begins[n] ?? Number.NaN;
            expect(begin).toBeGreaterThanOrEqual(earliest);
            expect(begin + length).toBeLessThanOrEqual(latest);
            if (n > 0) {
              const before = said[n - 1] ?? 0;
              expect(begin).toBeGreaterThanOrEqual((begins[n - 1] ?? 0) + (lines[before]?.length ?? 0));
            }
            for (const other of after) if (said.includes(other)) expect(said.indexOf(other)).toBeLessThan(n);
          });
        }
        for (const { shortBy } of aside) expect(shortBy).toBeGreaterThan(0);
      }),
      { numRuns: 150 },
    );
  });

  test("a line short of one tenth is said when its window is one tenth longer", () => {
    const two = (latest: number): Spoken[] => [
      { length: 30, earliest: 0, latest, worth: 102, after: [] },
      { length: 20, earliest: 0, latest, worth: 101, after: [] },
    ];
    expect(oneVoice(two(49))).toEqual({ said: [0], aside: [{ line: 1, shortBy: 1 }] });
    expect(oneVoice(two(50))).toEqual({ said: [0, 1], aside: [] });
  });
});
