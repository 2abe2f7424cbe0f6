/** A block in another order: exactly that order, as few moved as can be, one act, and others' work beside it untouched. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import * as Y from "yjs";
import { createPlanDoc } from "#lib/doc/create.ts";
import { planParts } from "#lib/doc/layout.ts";
import { orderedIds, readItems } from "#lib/doc/read.ts";
import { reorderItems } from "#lib/doc/reorder.ts";
import { moveItem, setItemField, type Writer } from "#lib/doc/write.ts";
import { movedIds } from "#lib/plan/moved.ts";
import { exampleMove, examplePlan } from "#lib/rules/define/example-plan.ts";

const IDS = ["h", "a", "b", "c", "d", "e", "f", "g", "next"];
const BLOCK = IDS.slice(1, -1);

function writer(): Writer {
  return { doc: createPlanDoc(examplePlan(IDS.map((id) => exampleMove(id))), { carry: true }), origin: "test" };
}
const orders = (doc: Y.Doc) => new Map([...planParts(doc).items].map(([id, map]) => [id, map.get("order")]));

/** The longest run that kept its order, by trying all subsets: what the fewest moved must agree with. */
function fewestMoved(before: readonly string[], after: readonly string[]): number {
  let longest = 0;
  for (let set = 0; set < 1 << after.length; set++) {
    const places = after.filter((_, i) => set & (1 << i)).map((id) => before.indexOf(id));
    if (places.every((p, i) => i === 0 || p > (places[i - 1] ?? 0))) longest = Math.max(longest, places.length);
  }
  return after.length - longest;
}

describe("a block in another order", () => {
  test("has exactly that order, nothing else moves, and no other way moves fewer items", () => {
    fc.assert(
      fc.property(fc.shuffledSubarray(BLOCK, { minLength: BLOCK.length }), (wanted) => {
        const w = writer();
        const before = orders(w.doc);
        reorderItems(w, "h", wanted);
        expect(orderedIds(w.doc)).toEqual(["h", ...wanted, "next"]);
        const after = orders(w.doc);
        const moved = IDS.filter((id) => before.get(id) !== after.get(id));
        expect(moved.length).toBe(fewestMoved(BLOCK, wanted));
        expect(new Set(moved)).toEqual(movedIds(BLOCK, wanted));
      }),
      { seed: 5_501, numRuns: 120 },
    );
  });

  test("has that order even where items share one key", () => {
    fc.assert(
      fc.property(
        fc.shuffledSubarray(BLOCK, { minLength: BLOCK.length }),
        fc.subarray([...BLOCK, "h"], { minLength: 2 }),
        (wanted, twins) => {
          const w = writer();
          const key = planParts(w.doc)
            .items.get(twins[0] ?? "")
            ?.get("order");
          // Twins stand in the order of their ids, wherever they stood before.
          for (const id of twins) planParts(w.doc).items.get(id)?.set("order", key);
          const now = orderedIds(w.doc);
          const block = wanted.filter((id) => now.indexOf(id) > now.indexOf("h"));
          reorderItems(w, "h", block);
          const after = orderedIds(w.doc);
          const from = after.indexOf("h") + 1;
          expect(after.slice(from, from + block.length)).toEqual(block);
        },
      ),
      { seed: 5_502, numRuns: 200 },
    );
  });

  test("is one act", () => {
    const w = writer();
    const undo = new Y.UndoManager([planParts(w.doc).items], { trackedOrigins: new Set(["test"]), captureTimeout: 0 });
    reorderItems(w, "h", [...BLOCK].reverse());
    expect(undo.undoStack.length).toBe(1);
    undo.undo();
    expect(orderedIds(w.doc)).toEqual(IDS);
    undo.destroy();
  });

  test("applied while somebody else moves and changes its items: nothing is duplicated, their seconds stay", () => {
    const mine = writer();
    const theirs: Writer = { doc: new Y.Doc(), origin: "theirs" };
    Y.applyUpdate(theirs.doc, Y.encodeStateAsUpdate(mine.doc));
    reorderItems(mine, "h", ["g", "f", "a", "b", "c", "d", "e"]);
    moveItem(theirs, "b", "next");
    setItemField(theirs, "g", "seconds", 33);
    Y.applyUpdate(theirs.doc, Y.encodeStateAsUpdate(mine.doc));
    Y.applyUpdate(mine.doc, Y.encodeStateAsUpdate(theirs.doc));
    expect(orderedIds(mine.doc)).toEqual(orderedIds(theirs.doc));
    expect(orderedIds(mine.doc)).toEqual(["h", "g", "f", "a", "c", "d", "e", "next", "b"]);
    expect(readItems(mine.doc).find((i) => i.id === "g")).toMatchObject({ seconds: 33 });
  });

  test("skips items that do not exist", () => {
    const w = writer();
    reorderItems(w, "h", ["b", "nobody", "a"]);
    expect(orderedIds(w.doc).slice(0, 3)).toEqual(["h", "b", "a"]);
  });
});
