/** A move typed, read and refused: nothing is lost on the way, and each field says its own fault in plain words. */

import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { STANDARD_FORMATS } from "#lib/formats/formats.ts";
import { factIn } from "#lib/library/changes.ts";
import { correctionWords } from "#lib/library/correction-words.ts";
import { EMPTY_DRAFT, type MoveDraft, moveDraft, NO_CORRECTION, readMoveDraft } from "#lib/library/draft.ts";
import { readMove } from "#lib/library/faults.ts";
import { moveSchema } from "#lib/plan/schema.ts";
import { STARTER_MOVES } from "#lib/starter/library.ts";
import { often } from "#tests/support/long.ts";
import { validPlan } from "#tests/support/plan-arbitrary.ts";

const [pushUp] = Object.values(STARTER_MOVES);
if (!pushUp) throw new Error("the starter library is empty");
const DRAFT = moveDraft({ ...pushUp, tempo: { outSeconds: 3, backSeconds: 2 } }, STANDARD_FORMATS);

/** Faults by place. */
function faults(change: Partial<MoveDraft>): Record<string, string> {
  const read = readMoveDraft({ ...DRAFT, ...change }, null);
  return read.ok ? {} : Object.fromEntries(read.faults.map((f) => [f.place, f.say]));
}
const times = (change: Partial<MoveDraft["times"]>) => ({ times: { ...DRAFT.times, ...change } });

describe("a draft", () => {
  test("of every move of the first library reads as that move", () => {
    for (const move of Object.values(STARTER_MOVES))
      expect(readMoveDraft(moveDraft(move, STANDARD_FORMATS), move)).toEqual({ ok: true, move });
  });

  test("of any valid move reads as that move, or says that its words are blank", () => {
    fc.assert(
      fc.property(validPlan, (plan) => {
        for (const move of Object.values(plan.moves)) {
          const read = readMoveDraft(moveDraft(move, STANDARD_FORMATS), move);
          if (read.ok) expect(read.move).toEqual(move);
          else for (const { place } of read.faults) expect(place).toMatch(/^(name|easier\.|harder\.|springs\.max\.)/);
        }
      }),
      { seed: 7, numRuns: 300 },
    );
  });

  test("a correction of the figure is typed in millimetres or inches, and kept as it was while nothing else is typed", () => {
    const move = { ...pushUp, figure: { start: { bendDeg: 5 }, end: { upMm: -33.3 } } };
    for (const length of ["cm", "in"] as const) {
      const units = { ...STANDARD_FORMATS, length };
      const draft = moveDraft(move, units);
      expect(readMoveDraft(draft, move)).toEqual({ ok: true, move });
      const typed = {
        ...draft,
        figure: { start: draft.figure.start, end: { upMm: length === "in" ? "−2" : "-50,8" } },
      };
      expect(readMoveDraft(typed, move)).toMatchObject({ ok: true, move: { figure: { end: { upMm: -50.8 } } } });
    }
    const inches = { ...STANDARD_FORMATS, length: "in" as const };
    expect(factIn("figure", correctionWords(move), inches)).toBe("start: back bent forward 5°; end: trunk up -1.31 in");
    const none = { ...moveDraft(move, STANDARD_FORMATS), figure: NO_CORRECTION };
    expect(readMoveDraft(none, move)).toEqual({ ok: true, move: pushUp });
  });

  test.each<[string, Partial<MoveDraft>, Record<string, string>]>([
    ["no name", { name: "  " }, { name: "Give the move a name." }],
    ["a long name", { name: "x".repeat(121) }, { name: "Give text of 1 to 120 characters." }],
    ["nothing chosen", { station: "" }, { station: "Choose where on the machine it is done." }],
    [
      "a word instead of a number",
      times({ outSeconds: "three" }),
      { "tempo.outSeconds": "Give a number from 0.1 to 120 seconds." },
    ],
    ["no time at all", times({ outSeconds: "0" }), { "tempo.outSeconds": "Give a number from 0.1 to 120 seconds." }],
    [
      "a correction of the figure that is too far, or no number",
      { figure: { start: { leanDeg: "100" }, end: { upMm: "up" } } },
      {
        "figure.start.leanDeg": "Give a number from -90 to 90.",
        "figure.end.upMm": "Give a number from -500 to 500 mm (-19.6 to 19.6 in).",
      },
    ],
    ["half a tempo", times({ backSeconds: "" }), { "tempo.backSeconds": "Give the seconds back." }],
    [
      "no tempo",
      times({ outSeconds: "", backSeconds: "" }),
      {
        "tempo.outSeconds": "Give the seconds out.",
        "tempo.backSeconds": "Give the seconds back.",
      },
    ],
    ["a weight above one", { muscles: { chest: "2" } }, { "muscles.chest": "Give a number from 0 to 1." }],
    [
      "half a spring",
      { springs: { light: { min: "0.5", max: "" } } },
      { "springs.min.light": "Give a whole number from 0 to 20." },
    ],
    [
      "a most below the least",
      { springs: { light: { min: "2", max: "1" } } },
      { "springs.max.light": "The most must not be below the least, which is 2." },
    ],
    ["half a range", { loadN: ["20", ""] }, { "loadN.1": "Give the end of the range too." }],
    [
      "a range downwards",
      { seconds: ["60", "30"] },
      { seconds: "The shortest time must not be longer than the longest." },
    ],
    ["a travel off the rail", { travel: ["0", "900"] }, { "travelMm.1": "Give a number from 0 to 500 cm." }],
    ["an effort of nobody", { met: "40" }, { met: "Give a number from 0.5 to 25." }],
    ["an empty way", { easier: [" "] }, { "easier.0": "Describe it, or remove this line." }],
  ])("%s is refused at its own field", (_what, change, expected) => {
    expect(faults(change)).toEqual(expected);
  });

  test("a decimal comma counts as a decimal point", () => {
    expect(readMoveDraft({ ...DRAFT, ...times({ outSeconds: "2,5" }) }, null)).toMatchObject({
      ok: true,
      move: { tempo: { outSeconds: 2.5 } },
    });
  });

  test("a new draft asks only for what has to be chosen", () => {
    const read = readMoveDraft(EMPTY_DRAFT, null);
    expect(read.ok ? [] : read.faults.map((f) => f.place)).toEqual([
      "name",
      "station",
      "position",
      "facing",
      "hands",
      "feet",
      "sides",
      "pattern",
      "tempo.outSeconds",
      "tempo.backSeconds",
    ]);
  });
});

describe("reading a move", () => {
  test("accepts exactly what the plan file's schema accepts, except blank words and contradicting springs", () => {
    fc.assert(
      fc.property(fc.constantFrom(...Object.keys(pushUp), "other"), fc.anything(), (key, value) => {
        const damaged = { ...pushUp, [key]: value };
        const read = readMove(damaged);
        const schema = moveSchema.safeParse(damaged).success;
        if (read.ok) expect(schema).toBe(true);
        else {
          expect(read.faults.length).toBeGreaterThan(0);
          if (schema) expect(JSON.stringify(read.faults)).toMatch(/name|Write the way|The most/);
          for (const { say } of read.faults) expect(say).not.toMatch(/invalid|expected|received|undefined|NaN|union/i);
        }
      }),
      { seed: 11, numRuns: often(500, 2000) },
    );
  });

  test.each([[null], ["x"], [undefined], [[]], [0]])("%j is no move", (value) => {
    expect(readMove(value)).toMatchObject({ ok: false });
  });
});

test("a load or a travel out of bounds is told in the units that it was typed in", () => {
  const units = { force: "lbf", length: "in" } as const;
  const typed = { ...moveDraft(pushUp, units), loadN: ["0", "1200"], travel: ["0", "197"] } as const;
  const read = readMoveDraft({ ...typed, resistance: "springs" }, null);
  // NIST SP 811, B.8: 5000 N are 1124.04 lbf, 5 m are 196.85 in.
  expect(read.ok ? [] : read.faults).toEqual([
    { place: "loadN.1", say: "Give a number from 0 to 1124.04 lbf." },
    { place: "travelMm.1", say: "Give a number from 0 to 196.85 in." },
  ]);
});
