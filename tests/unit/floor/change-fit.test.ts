/** What gives way on the screen of a change, in which order, and what never does. */
import { describe, expect, test } from "vitest";
import { CHANGE_GIVES, type ChangeTrial, changeTrials, comingTrials } from "#lib/floor/change-fit.ts";
import { CAP_RATIO, capArcMinutes } from "#lib/floor/legibility.ts";
import { DISTANCES_M } from "#lib/floor/settings.ts";

const arc = (px: number, metres: number) => capArcMinutes(px, CAP_RATIO, metres * 1000);
const at = (distanceM: number, check = false) => changeTrials({ distanceM, most: 170, check });
/** Those in which the open act can be read at the distance, in the order in which they are tried. */
const readable = (metres: number, check = false): ChangeTrial[] =>
  at(metres, check)
    .flat()
    .filter(({ open }) => arc(open, metres) >= 20 - 1e-9);

describe("what gives way", () => {
  test("first to last: name, was, numbers, one act to a line, whole acts; sizes of the other acts between", () => {
    expect(CHANGE_GIVES).toEqual(["name", "was", "numbers", "lines", "rows"]);
    // Beside an open act: nothing is given up as long as another act is larger than it has to be.
    const opened = readable(4).filter(({ acts, open }) => acts < open);
    const order = opened.map(({ gone, acts, on, rest, open }) => [gone, -acts, -on, -rest / open] as const);
    const largest = (gone: number) => Math.max(...opened.filter((one) => one.gone === gone).map(({ acts }) => acts));
    expect(order.map(([gone]) => gone)).toEqual([...order.map(([gone]) => gone)].sort((a, b) => a - b));
    for (const gone of [0, 1, 2, 3]) {
      const sizes = opened.filter((one) => one.gone === gone).map(({ acts }) => acts);
      expect(Math.min(...sizes)).toBe(64);
      expect(largest(gone)).toBeGreaterThan(100);
    }
    expect(Math.min(...opened.map(({ acts }) => acts))).toBe(50);
  });

  test("other acts shrink before now on does, now on before the rest of a long act", () => {
    const last = readable(4).filter(({ gone }) => gone === CHANGE_GIVES.length);
    const firstSmall = (is: (one: ChangeTrial) => boolean) => last.findIndex(is);
    const acts = firstSmall((one) => one.acts === 50);
    const on = firstSmall((one) => one.on === 58);
    const rest = firstSmall((one) => one.rest < one.open);
    expect([acts, on, rest].every((place) => place >= 0)).toBe(true);
    expect(acts).toBeLessThan(on);
    expect(on).toBeLessThan(rest);
  });

  test("if all acts can be read at the distance, they stand still: tried first, at one size", () => {
    const [first] = at(4);
    for (const { open, acts, on, rest, gone } of first ?? []) {
      expect([acts, on, rest, gone]).toEqual([open, open, open, 0]);
      expect(arc(open, 4)).toBeGreaterThanOrEqual(20);
    }
  });
});

describe.each(DISTANCES_M.map((metres) => [metres]))("at %d m", (metres) => {
  test.each([false, true])(
    "the open act and the seconds never go below 20 arcmin while anything can give way",
    (check) => {
      const trials = at(metres, check);
      const below = trials.findIndex((group) => group.some(({ open }) => arc(open, metres) < 20 - 1e-9));
      for (const { open, rest, seconds, acts, on, gone } of trials.slice(0, below).flat()) {
        expect(arc(open, metres)).toBeGreaterThanOrEqual(20 - 1e-9);
        expect(arc(seconds, metres)).toBeGreaterThanOrEqual(20 - 1e-9);
        // ISO 9241-303 allows no less than 16 arcmin.
        expect(arc(rest, metres)).toBeGreaterThanOrEqual(16);
        expect(acts).toBeLessThanOrEqual(open);
        expect(on).toBeLessThanOrEqual(open);
        expect(gone).toBeLessThanOrEqual(CHANGE_GIVES.length);
      }
      // From there on it only gets smaller, and at each size nothing is left out that has room.
      const after = trials.slice(below);
      const opens = after.map(([one]) => one?.open ?? 0);
      expect(opens).toEqual([...opens].sort((a, b) => b - a));
      for (const group of after) expect(group[0]?.gone).toBe(0);
    },
  );

  test("the name of what comes is 20 arcmin until its acts are as small as they may be", () => {
    const trials = comingTrials(metres, 200).flat();
    const first = trials.findIndex(({ open }) => arc(open, metres) < 20 - 1e-9);
    expect(trials[first - 1]?.acts).toBe(Math.min(...trials.slice(0, first).map(({ acts }) => acts)));
  });
});
