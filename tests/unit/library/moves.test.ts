/** Ids from names, differences in words, two people's changes put together, and what a move leaves unsaid. */

import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { STANDARD_FORMATS } from "#lib/formats/formats.ts";
import { changedKeys, mergeMoves, moveChanges } from "#lib/library/changes.ts";
import { moveDoubts } from "#lib/library/doubts.ts";
import { moveIdFor } from "#lib/library/move-id.ts";
import { repWords, springLimitWords, tempoWords } from "#lib/library/move-words.ts";
import { ID_PATTERN, type Move } from "#lib/plan/schema.ts";
import { STARTER_MOVES } from "#lib/starter/library.ts";
import { STARTER_EQUIPMENT } from "#lib/starter/room.ts";
import { validPlan } from "#tests/support/plan-arbitrary.ts";

const base = STARTER_MOVES["push-up-slow"];
if (!base) throw new Error("the starter library has no push-up");

describe("the id of a new move", () => {
  test.each([
    ["Slow push-up", [], "slow-push-up"],
    ["  Brücke à genoux! ", [], "brucke-a-genoux"],
    ["Slow push-up", ["slow-push-up", "slow-push-up-2"], "slow-push-up-3"],
    ["橋", [], "move"],
    ["橋", ["move"], "move-2"],
    ["---", [], "move"],
    ["New", [], "new-2"],
  ])("%j", (name, taken, id) => {
    expect(moveIdFor(name, new Set(taken))).toBe(id);
  });
  test("is always valid and never already taken", () => {
    fc.assert(
      fc.property(fc.string({ unit: "grapheme", maxLength: 120 }), (name) => {
        const first = moveIdFor(name, new Set());
        const second = moveIdFor(name, new Set([first]));
        expect(first).toMatch(ID_PATTERN);
        expect(second).toMatch(ID_PATTERN);
        expect(second).not.toBe(first);
      }),
      { seed: 3 },
    );
  });
});

describe("differences", () => {
  test("are given fact by fact, in words", () => {
    const after: Move = { ...base, tempo: { outSeconds: 4, backSeconds: 2 }, springs: { max: { strong: 0 } }, met: 5 };
    expect(moveChanges(base, after, new Map([["strong", "heavy"]]))).toEqual([
      { key: "springs", label: "springs", before: "at most 1 heavy", after: "at most no heavy" },
      {
        key: "tempo",
        label: "tempo",
        before: "3 s out, 2 s back: 5 s a repetition",
        after: "4 s out, 2 s back: 6 s a repetition",
      },
      { key: "met", label: "effort", before: `${base.met} MET`, after: "5 MET" },
    ]);
  });
  test("an empty list and a missing one are the same", () => {
    const { cautions: _gone, ...without } = base;
    expect(changedKeys({ ...without, cautions: [] }, without)).toEqual([]);
  });
});

describe("two people's changes of one move", () => {
  const mine: Move = { ...base, name: "Push-up, slow", tempo: { outSeconds: 4, backSeconds: 2 } };
  const theirs: Move = { ...base, name: "Push-up in three", cautions: ["wrist-load", "long-hold"] };
  test("a fact only one changed is kept; facts both changed are listed", () => {
    const merged = mergeMoves(base, mine, theirs);
    expect(merged.both).toEqual(["name"]);
    expect(merged.taken).toEqual(["cautions"]);
    expect(merged.move).toEqual({ ...mine, cautions: theirs.cautions });
  });
  test("a fact the other person removed is removed", () => {
    const { met: _met, ...without } = base;
    expect(mergeMoves(base, { ...base, name: "Mine" }, without).move).toEqual({ ...without, name: "Mine" });
  });
  test("if only I changed it: mine; if only they did: theirs; if both agree: no question", () => {
    const moves = validPlan.filter((p) => Object.keys(p.moves).length >= 3).map((p) => Object.values(p.moves));
    fc.assert(
      fc.property(moves, ([a, b, c]) => {
        if (!a || !b || !c) return;
        expect(mergeMoves(a, b, a)).toEqual({ move: b, taken: [], both: [] });
        expect(changedKeys(mergeMoves(a, a, b).move, b)).toEqual([]);
        expect(mergeMoves(a, b, b).both).toEqual([]);
        const { move, both } = mergeMoves(a, b, c);
        for (const key of changedKeys(a, c)) if (!both.includes(key)) expect(changedKeys(move, c)).not.toContain(key);
      }),
      { seed: 5, numRuns: 60 },
    );
  });
});

describe("doubts", () => {
  const rooms = [{ name: "Harbour room", equipment: STARTER_EQUIPMENT }];
  const about = (change: Partial<Move>) =>
    moveDoubts({ ...base, ...change }, rooms, STANDARD_FORMATS).map((d) => d.key);
  test("a complete move has none", () => {
    expect(about({})).toEqual([]);
  });
  test.each<[string, Partial<Move>, string]>([
    ["no muscles", { muscles: {} }, "muscles"],
    ["only small helpers", { muscles: { chest: 0.3 } }, "muscles"],
    ["care and no easier way", { easier: [] }, "easier"],
    ["kneeling, not marked", { position: "kneeling", cautions: [] }, "cautions"],
    ["no whole repetition", { tempo: { outSeconds: 50, backSeconds: 20 } }, "seconds"],
    ["a spring of no room", { springs: { max: { copper: 1 } } }, "springs"],
    ["more springs than there are", { springs: { min: { light: 19 } } }, "springs"],
    ["longer than the carriage", { travelMm: [0, 4000] }, "travelMm"],
    ["springs that are not looked at", { resistance: "bodyweight" }, "springs"],
  ])("%s", (_what, change, key) => {
    expect(about(change)).toContain(key);
  });
  test("each missing fact is a doubt", () => {
    const { loadN: _l, springs: _s, travelMm: _t, exhaleOn: _e, met: _m, seconds: _r, handsShare: _h, ...bare } = base;
    expect(moveDoubts(bare, rooms, STANDARD_FORMATS).map((d) => d.key)).toEqual([
      "loadN",
      "springs",
      "travelMm",
      "exhaleOn",
      "seconds",
      "met",
      "handsShare",
    ]);
  });
});

describe("words", () => {
  test("tempo, repetitions and springs", () => {
    const move: Move = {
      ...base,
      tempo: { outSeconds: 2, outHoldSeconds: 1, backSeconds: 2.5, backHoldSeconds: 0.5 },
      seconds: [30, 60],
      springs: { min: { light: 1 }, max: { light: 2, strong: 0 } },
    };
    expect(tempoWords(move)).toBe("2 s out, hold 1 s, 2.5 s back, hold 0.5 s: 6 s a repetition");
    expect(repWords(move)).toBe("5 to 10 repetitions in 30 to 60 s");
    expect(springLimitWords(move)).toBe("at least 1 light; at most 2 light, no strong");
    expect(repWords({ ...move, tempo: { holdSeconds: true } })).toBe("");
  });
});
