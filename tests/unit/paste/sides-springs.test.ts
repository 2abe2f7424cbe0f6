/** Reading sides, facing, offset and springs from the words of a row. */
import { describe, expect, test } from "vitest";
import { RowField } from "#lib/paste/field.ts";
import { readFacing, readOffset, readSides } from "#lib/paste/read-side.ts";
import { springVocabulary } from "#lib/paste/spring-vocabulary.ts";
import { STARTER_EQUIPMENT } from "#lib/starter/room.ts";
import { read } from "./studio.ts";

describe("sides", () => {
  test.each([
    ["left", ["left"]],
    ["on the right side", ["right"]],
    ["right leg", ["right"]],
    ["L", ["left"]],
    ["(r)", ["right"]],
    ["R side", ["right"]],
    ["L/R", ["left-right"]],
    ["l/r", ["left-right"]],
    ["R + L", ["right-left"]],
    ["left and right", ["left-right"]],
    ["right then left", ["right-left"]],
    ["each side", ["left-right"]],
    ["each leg", ["left-right"]],
    ["per side", ["left-right"]],
    ["e/s", ["left-right"]],
    ["both sides", ["both"]],
    ["alternating", ["alternating"]],
    ["alt.", ["alternating"]],
    ["left knee in, right knee in", ["left", "right"]],
    ["one side, sideways", []],
    ["l or r", []],
    ["hold, all in", []],
  ])("%s", (words, sides) => {
    expect(readSides(new RowField(`Side lunge ${words}`), false, null)).toEqual(sides);
  });

  test("in a column of sides a small letter counts", () => {
    expect(["l", "R", "b", "each", "l/r", "-"].map((t) => readSides(new RowField(t), true, null)[0])).toEqual([
      "left",
      "right",
      "both",
      "left-right",
      "left-right",
      undefined,
    ]);
  });

  test("a name in the library keeps its own words", () => {
    expect(readSides(new RowField("Both legs lift, left"), false, { from: 0, to: 14 })).toEqual(["left"]);
  });
});

test.each([
  ["facing back", "back"],
  ["faces the front", "front"],
  ["facing out", undefined],
])("%s", (text, facing) => {
  expect(readFacing(new RowField(text))).toBe(facing);
});

test.each([
  ["offset 80 mm", 80],
  ["offset: 8 cm", 80],
  ["sit 10 cm further", 100],
  ["10 cm further from the anchor", 100],
  ["8cm closer", -80],
  ["8 cm", undefined],
  ["offset 900 cm", undefined],
])("%s", (text, mm) => {
  expect(readOffset(new RowField(text))).toBe(mm);
});

describe("springs by the room's labels", () => {
  const springs = (words: string) => read(`Kneeling row  60 s  ${words}`).rows[0]?.springs;
  test.each([
    ["2 light", { light: 2 }],
    ["two light springs", { light: 2 }],
    ["light x2", { light: 2 }],
    ["2x light", { light: 2 }],
    ["1 light + 1 middle", { light: 1, middle: 1 }],
    ["1light,1middle", { light: 1, middle: 1 }],
    ["light: 2, firm: 1", { light: 2, firm: 1 }],
    ["1 L + 1 M", { light: 1, middle: 1 }],
    ["2L 1F", { light: 2, firm: 1 }],
    ["light", { light: 1 }],
    ["light + middle", { light: 1, middle: 1 }],
    ["1 mid", { middle: 1 }],
    ["2 Lights", { light: 2 }],
  ])("%s", (words, counts) => {
    expect(springs(words)).toMatchObject({ counts, unknown: [] });
  });

  test.each([
    ["2 blue", [{ word: "blue", count: 2 }]],
    ["one heavy", [{ word: "heavy", count: 1 }]],
    ["2 springs", [{ word: "", count: 2 }]],
    ["3 bouncy springs", [{ word: "bouncy", count: 3 }]],
    ["heavy", [{ word: "heavy", count: 1 }]],
  ])("%s is no spring of this room", (words, unknown) => {
    expect(springs(words)).toMatchObject({ counts: {}, unknown });
  });

  test("words that mean no springs", () => {
    expect(springs("no springs")?.none).toBe(true);
    expect(
      read("Move\tTime\tSprings\nKneeling row\t60\tnone\nPlank hold\t30\t-").rows.map((r) => r.springs.none),
    ).toEqual([true, true]);
  });

  test("a letter that two labels begin with stays unknown", () => {
    const words = springVocabulary([
      { id: "a", label: "soft", count: 2, stiffnessNPerMm: 0.1, preloadN: 1 },
      { id: "b", label: "strong", count: 2, stiffnessNPerMm: 0.2, preloadN: 1 },
    ]);
    expect(words.shortFor("s").map((s) => s.id)).toEqual(["a", "b"]);
    expect(words.shortFor("str").map((s) => s.id)).toEqual(["b"]);
  });

  test("a studio's labels may contain anything", () => {
    const odd = ["(a+", "x|y", "[", "über schwer", "1", "."].map((label, i) => ({
      ...STARTER_EQUIPMENT.springs[0],
      id: `s${i}`,
      label,
    }));
    const words = springVocabulary(odd.map((s) => ({ count: 2, stiffnessNPerMm: 0.1, preloadN: 1, ...s })));
    expect(words.byLabel("Über schwer springs")?.id).toBe("s3");
  });
});
