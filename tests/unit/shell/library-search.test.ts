/** The library's search and filters, over the demo's moves. */
import { describe, expect, it } from "vitest";
import { type LibraryFilter, NO_FILTER, passes } from "#app/library/move-words.ts";
import { STARTER_MOVES } from "#lib/starter/library.ts";

const found = (part: Partial<LibraryFilter>) =>
  Object.entries(STARTER_MOVES)
    .filter(([, move]) => passes(move, { ...NO_FILTER, ...part }))
    .map(([id]) => id);

describe("finding a move", () => {
  it("shows everything before anything is asked", () => {
    expect(found({})).toEqual(Object.keys(STARTER_MOVES));
    expect(found({ text: "  " })).toEqual(Object.keys(STARTER_MOVES));
  });
  it("wants every word, in any order, in the name or the facts", () => {
    expect(found({ text: "row kneeling" })).toContain("row-single");
    expect(found({ text: "row kneeling" })).not.toContain("row-seated");
    expect(found({ text: "PIKE forearm" })).toEqual(["forearm-pike"]);
    expect(found({ text: "no such move" })).toEqual([]);
  });
  it("leaves out what asks for a care that somebody cannot take", () => {
    const ids = found({ without: "wrist-load" });
    expect(ids.length).toBeGreaterThan(0);
    for (const id of ids) expect(STARTER_MOVES[id]?.cautions ?? []).not.toContain("wrist-load");
  });
  it("finds helpers as well as prime movers", () => {
    expect(found({ group: "triceps" })).toEqual(expect.arrayContaining(["push-up-slow", "triceps-press-back"]));
  });
});
