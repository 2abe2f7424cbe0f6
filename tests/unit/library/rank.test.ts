/** One search in every place: what it finds, in which order, and that a pasted list offers moves in the same order. */
import { afterAll, describe, expect, test } from "vitest";
import { foldedWords } from "#lib/library/fold.ts";
import { nameIndexOf } from "#lib/library/name-index.ts";
import { rankMoves } from "#lib/library/rank-moves.ts";
import { findMoves, libraryIndex, NO_FILTER, searchMoves } from "#lib/library/search.ts";
import { matchMove } from "#lib/paste/match-move.ts";
import type { Move } from "#lib/plan/schema.ts";
import { STARTER_MOVES } from "#lib/starter/library.ts";

const index = libraryIndex(STARTER_MOVES);
const found = (text: string) => findMoves(index, { ...NO_FILTER, text }).map(({ move }) => move.name);
const named = (...names: string[]) =>
  Object.fromEntries(names.map((name) => [name, { ...(STARTER_MOVES["plank-hold"] as Move), name }]));
const order = (names: Record<string, Move>, text: string) => searchMoves(names, text).map(({ id }) => id);

describe("the order: exact, words in order, parts", () => {
  test("the same name, then names that begin with it, then its words in order, then in any order", () => {
    const names = named("Press row", "Wide reach and row", "Row, low reach", "Reach, row, press", "Reach row");
    expect(order(names, "reach row")).toEqual([
      "Reach row",
      "Reach, row, press",
      "Wide reach and row",
      "Row, low reach",
    ]);
  });
  test("a name as typed comes before what its short form stands for", () => {
    expect(order(named("Overhead press", "OH press"), "oh press")).toEqual(["OH press", "Overhead press"]);
  });
  test("a name comes before facts, and nothing but all words is found", () => {
    expect(found("knee press")[0]).toBe("Kneeling chest press");
    expect(found("press pike lunge")).toEqual([]);
  });
});

describe("the search reads what a pasted list reads", () => {
  test.each([
    ["OH press", "Kneeling overhead press"],
    ["lat p/d", "Kneeling lat pull-down"],
    ["s/a row", "Kneeling single-arm row"],
    ["knee lat pull", "Kneeling lat pull-down"],
    ["bk ext", "Prone back extension with arm pull"],
    ["pulldown lat", "Kneeling lat pull-down"],
    ["lat pulld", "Kneeling lat pull-down"],
    ["pushup slow", "Slow push-up"],
    ["press up wide", "Wide push-up, hands on the bars"],
    ["pike fore", "Forearm plank to pike"],
    ["PULLDÓWN láts", "Kneeling lat pull-down"],
  ])("%s", (query, first) => expect(found(query)[0]).toBe(first));

  test("British and American spelling, and accents, find the same", () => {
    const names = named("Centre balance", "Stabiliser hold", "Plié squat");
    expect(order(names, "center")).toEqual(["Centre balance"]);
    expect(order(names, "stabilizer")).toEqual(["Stabiliser hold"]);
    expect(order(names, "plie")).toEqual(["Plié squat"]);
  });
});

test.each(["leg press", "plank", "OH press", "press", "bi curl", "kneeling press", "squat"])(
  "a pasted %s offers moves in the order of the search",
  (name) => {
    const offered = matchMove(name, nameIndexOf(STARTER_MOVES)).near.map(({ move }) => move);
    const searched = searchMoves(STARTER_MOVES, name).map(({ id }) => id);
    const both = searched.filter((id) => offered.includes(id));
    expect(both.length).toBeGreaterThan(1);
    expect(offered.filter((id) => searched.includes(id))).toEqual(both);
  },
);

describe("two parts of a name that only one move has find it first", () => {
  const wordsOf = (name: string) => [...new Set(foldedWords(name).map((w) => w.bare))].filter((w) => w.length >= 3);
  /** Whether a name has two different words that begin so; worked out here from the names alone. */
  const hasBoth = (name: string, [a, b]: readonly [string, string]) => {
    const words = wordsOf(name);
    return words.some((one) => one.startsWith(a) && words.some((other) => other !== one && other.startsWith(b)));
  };
  const partsOf = (word: string) =>
    [...new Set([3, 4, Math.ceil(word.length / 2) + 1, word.length])].flatMap((n) =>
      n < 3 || n > word.length ? [] : word.slice(0, n),
    );
  const pairsOf = (name: string) => {
    const words = wordsOf(name);
    return words.flatMap((one) =>
      words.flatMap((other) =>
        one === other ? [] : partsOf(one).flatMap((a) => partsOf(other).map((b): [string, string] => [a, b])),
      ),
    );
  };
  const names = Object.values(STARTER_MOVES).map(({ name }) => name);
  const typed = nameIndexOf(STARTER_MOVES);
  let tried = 0;
  afterAll(() => expect(tried).toBeGreaterThan(2000));

  test.each(Object.entries(STARTER_MOVES).map(([id, { name }]) => [name, id] as const))("%s", (name, id) => {
    const pairs = pairsOf(name).filter((pair) => names.filter((other) => hasBoth(other, pair)).length === 1);
    const wrong = pairs.filter((pair) => rankMoves(pair.join(" "), typed, true)[0]?.entry.id !== id);
    expect(wrong).toEqual([]);
    // The library's search looks through facts as well; names still come first.
    const some = pairs.filter((_, at) => at % 7 === 0);
    expect(some.filter((pair) => found(pair.join(" "))[0] !== name)).toEqual([]);
    tried += pairs.length;
  });
});
