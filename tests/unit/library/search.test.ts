import { describe, expect, test } from "vitest";
import { filterFromQuery, filterToQuery } from "#lib/library/filter-query.ts";
import { findMoves, type LibraryFilter, libraryIndex, NO_FILTER, searchMoves } from "#lib/library/search.ts";
import { GROUPS, MOVE_CAUTIONS, type Move } from "#lib/plan/schema.ts";
import { STARTER_MOVES } from "#lib/starter/library.ts";
import { cpuMs } from "#tests/support/cpu-time.ts";

const move = (name: string, rest: Partial<Move>): Move => ({
  name,
  station: "carriage",
  position: "kneeling",
  facing: "back",
  hands: "handles",
  feet: "carriage",
  sides: "both",
  pattern: "pull",
  muscles: {},
  resistance: "springs",
  tempo: { outSeconds: 3, backSeconds: 3 },
  ...rest,
});
const moves = {
  row: move("Kneeling row", { muscles: { "upper-back": 1, biceps: 0.5 }, springs: { min: { firm: 1 } } }),
  press: move("Chest press on the bars", {
    pattern: "push",
    position: "plank",
    muscles: { chest: 1 },
    cautions: ["wrist-load"],
  }),
  reach: move("Quadruped leg reach", {
    position: "quadruped",
    sides: "each",
    pattern: "extension",
    muscles: { glutes: 1 },
  }),
};
const ids = (query: string) => searchMoves(moves, query).map((m) => m.id);

describe("searchMoves", () => {
  test.each([
    ["by name", "chest press", ["press"]],
    ["by muscle, in two words", "upper back", ["row"]],
    ["by position", "quadruped", ["reach"]],
    ["by pattern and muscle together", "pull bic", ["row"]],
    ["by side", "each", ["reach"]],
    ["letter case does not matter", "KNEEL", ["row"]],
    ["all words must fit", "push upper", []],
    ["by its cautions", "wrist load", ["press"]],
    ["by the spring it needs", "firm", ["row"]],
  ])("%s", (_say, query, found) => {
    expect(ids(query)).toEqual(found);
  });
  test("with nothing typed, all moves are listed by name", () => {
    expect(ids("  ")).toEqual(["press", "row", "reach"]);
  });
});

describe("the library's choices", () => {
  const index = libraryIndex(STARTER_MOVES);
  const find = (filter: Partial<LibraryFilter>) => findMoves(index, { ...NO_FILTER, ...filter });

  test("every word counts, in any order, in the name or the facts; helpers are found as well as prime movers", () => {
    const found = (filter: Partial<LibraryFilter>) => find(filter).map(({ id }) => id);
    expect(find({})).toHaveLength(Object.keys(STARTER_MOVES).length);
    expect(found({ text: "row kneeling" })).toContain("row-single");
    expect(found({ text: "row kneeling" })).not.toContain("row-seated");
    expect(found({ text: "PIKE forearm" })).toEqual(["forearm-pike"]);
    expect(found({ text: "no such move" })).toEqual([]);
    expect(found({ group: "triceps" })).toEqual(expect.arrayContaining(["push-up-slow", "triceps-press-back"]));
  });

  test("each choice keeps exactly the moves that have it", () => {
    const all = Object.values(STARTER_MOVES);
    const counts = (filter: Partial<LibraryFilter>, keep: (m: Move) => boolean) => {
      const found = find(filter);
      expect(found.every(({ move }) => keep(move))).toBe(true);
      expect(found.length).toBe(all.filter(keep).length);
      expect(found.length).toBeGreaterThan(0);
    };
    counts({ group: "glutes" }, (m) => (m.muscles.glutes ?? 0) > 0);
    counts({ pattern: "pull" }, (m) => m.pattern === "pull");
    counts({ position: "supine" }, (m) => m.position === "supine");
    counts({ station: "front" }, (m) => m.station === "front");
    counts({ asks: "kneeling" }, (m) => m.cautions?.includes("kneeling") === true);
    counts({ without: ["kneeling", "wrist-load"] }, (m) => !m.cautions?.some((c) => /^(kneeling|wrist-load)$/.test(c)));
    counts({ springs: "takes strong" }, (m) => m.resistance !== "bodyweight" && m.springs?.max?.strong !== 0);
  });

  test("springs: one that is needed, none at all, and all choices combined", () => {
    const some = {
      needs: move("Needs one", { springs: { min: { firm: 1 } } }),
      zero: move("Zero is not needed", { springs: { min: { firm: 0 }, max: { firm: 0 } } }),
      plain: move("No springs", { resistance: "bodyweight", springs: { min: { firm: 1 } } }),
    };
    const ids = (springs: LibraryFilter["springs"]) =>
      findMoves(libraryIndex(some), { ...NO_FILTER, springs }).map((m) => m.id);
    expect(ids("needs firm")).toEqual(["needs"]);
    expect(ids("takes firm")).toEqual(["needs"]);
    expect(ids("takes other")).toEqual(["needs", "zero"]);
    expect(ids("bodyweight")).toEqual(["plain"]);
  });

  test("names beginning with the text come first, then names containing it, then the rest", () => {
    const some = {
      c: move("Wide reach", {}),
      b: move("Reach and press", {}),
      a: move("Side bend", { cautions: ["overhead"], hands: "front-bars" }),
    };
    expect(searchMoves(some, "reach").map((m) => m.id)).toEqual(["b", "c"]);
    expect(searchMoves(some, "s").map((m) => m.id)[0]).toBe("a");
  });

  test("moves taken out of the library are not offered", () => {
    expect(libraryIndex(moves, undefined, ["row"]).entries.map((e) => e.id)).toEqual(["press", "reach"]);
  });

  test("a choice goes into an address and back; unknown values in an address are skipped", () => {
    const filter: LibraryFilter = {
      text: "row é",
      group: GROUPS[3],
      pattern: "pull",
      position: "seated",
      station: "back",
      springs: "needs light",
      asks: "kneeling",
      without: [MOVE_CAUTIONS[0], MOVE_CAUTIONS[5]],
    };
    const back = (query: string) => {
      const params = new URLSearchParams(query);
      return filterFromQuery((key) => params.get(key));
    };
    expect(back(filterToQuery(filter))).toEqual(filter);
    expect(filterToQuery(NO_FILTER)).toBe("");
    expect(back("?trains=nothing&springs=takes%20<b>&without=a.b&pattern=__proto__")).toEqual(NO_FILTER);
  });

  test("a typo still finds a move, but only when nothing matches exactly", () => {
    const index = libraryIndex(STARTER_MOVES);
    const names = (text: string) => findMoves(index, { ...NO_FILTER, text }).map(({ move }) => move.name.toLowerCase());
    expect(names("plnak").some((name) => name.includes("plank"))).toBe(true);
    expect(names("kneelign row").some((name) => name.includes("row"))).toBe(true);
    expect(names("qqqq")).toEqual([]);
    // "press" is a word of the library: words that are only like it are not brought in.
    expect(findMoves(index, { ...NO_FILTER, text: "press" })).toEqual(searchMoves(STARTER_MOVES, "press"));
  });

  test("five hundred moves are searched eight times within a second", () => {
    const many = Object.fromEntries(
      Array.from({ length: 500 }, (_, i) => {
        const [id, one] = Object.entries(STARTER_MOVES)[i % Object.keys(STARTER_MOVES).length] ?? ["", moves.row];
        return [`${id}-${i}`, { ...one, name: `${one.name} ${i}` }];
      }),
    );
    const big = libraryIndex(many);
    let found: ReturnType<typeof findMoves>[] = [];
    const took = cpuMs(() => {
      found = ["k", "kn", "kne", "knee", "kneel", "kneeling row", "chest press 4", "w"].map((text) =>
        findMoves(big, { ...NO_FILTER, text }),
      );
    });
    // About twenty milliseconds each at worst: as much again and more for a slower machine.
    expect(took).toBeLessThan(1000);
    expect(found.every((moves) => moves.length > 0)).toBe(true);
  });
});
