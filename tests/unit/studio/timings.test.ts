/** A room's own seconds as they are typed, and what typical changes cost with them. */
import { expect, test } from "vitest";
import { changeCost, TIMED_WORDS, typicalChanges } from "#app/studio/_timings/timing-words.ts";
import { readSpread, readTimings, spreadTextOf, timingsDraftOf } from "#app/studio/_timings/timings-draft.ts";
import { ACTIONS, actionSecondsSchema } from "#lib/plan/schema.ts";
import { EQUIPMENT } from "#tests/support/plan-studio.ts";

test("every action and the base has words of its own", () => {
  expect(TIMED_WORDS.map(([timed]) => timed).sort()).toEqual(["base", ...ACTIONS].sort());
  expect(new Set(TIMED_WORDS.map(([, words]) => words)).size).toBe(TIMED_WORDS.length);
});

test("empty is the usual, 0 is 0, a comma is a point, and what is wrong is said and not kept", () => {
  const draft = { ...timingsDraftOf({ base: 0, springOn: 2.5 }), springOff: "1,5", quarterTurn: "two", strapOn: "121" };
  expect(draft.base).toBe("0");
  const { given, problems } = readTimings(draft);
  expect(given).toEqual({ base: 0, springOn: 2.5, springOff: 1.5 });
  expect(Object.keys(problems)).toEqual(["quarterTurn", "strapOn"]);
  expect(actionSecondsSchema.safeParse(given).success).toBe(true);
  expect(readTimings(timingsDraftOf(undefined))).toEqual({ given: {}, problems: {} });
});

test("how much people differ is a percentage, empty for the usual", () => {
  expect([undefined, 0, 0.15, 0.125].map(spreadTextOf)).toEqual(["", "0", "15", "12.5"]);
  expect(["", " 15 ", "12,5", "0", "100"].map((text) => readSpread(text).share)).toEqual([null, 0.15, 0.125, 0, 1]);
  for (const wrong of ["-1", "101", "a lot"]) {
    expect(readSpread(wrong).share).toBeUndefined();
    expect(readSpread(wrong).problem).toContain("0 to 100");
  }
});

test("more people, or people who differ more, take longer over the same change", () => {
  const [springs] = typicalChanges(EQUIPMENT);
  if (!springs) throw new Error("the room has springs");
  // 9 x 1.2308 = 11.08, 9 x (1 + 0.3 x 1.53875) = 13.15
  expect(changeCost(springs, EQUIPMENT, 10).estimate).toBe(12);
  expect(changeCost(springs, { ...EQUIPMENT, spreadShare: 0.3 }, 10).estimate).toBe(14);
});

test("typical changes with the usual seconds, added up by hand", () => {
  const costs = typicalChanges(EQUIPMENT).map((change) => [change.words, changeCost(change, EQUIPMENT).estimate]);
  expect(costs).toEqual([
    ["Only springs: one light off, one firm on", 9], // base 2 + on 3 + off 2 + home 2
    ["A one-handed row, the other side", 5], // base 2 + up 1.5 + down 1, rounded up
    ["Handles down, from kneeling to a plank on the front bars", 7], // base 2 + position 3 + 2 x down 1
    ["Kneeling, turned round to face the back", 5], // base 2 + 2 x 1.5
    ["Off the bars, a foot out of its strap, onto the back", 9], // base 2 + position 3 + strap 2 + grip 1.5, rounded up
  ]);
  const slow = { ...EQUIPMENT, actionSeconds: { base: 4 } };
  expect(typicalChanges(slow).map((change) => changeCost(change, slow).estimate)).toEqual([11, 7, 9, 7, 11]);
});

test("a room with one spring or none has no change of springs to show", () => {
  for (const springs of [[], EQUIPMENT.springs.slice(0, 1)]) {
    const words = typicalChanges({ ...EQUIPMENT, springs }).map((change) => change.words);
    expect(words).toEqual(
      typicalChanges(EQUIPMENT)
        .map((change) => change.words)
        .slice(1),
    );
  }
});
