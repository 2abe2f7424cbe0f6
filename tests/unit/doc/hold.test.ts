/** Ties and "comes after" in a shared document: made, joined, split, left; two people at once; old documents. */
import { describe, expect, test } from "vitest";
import * as Y from "yjs";
import { createPlanDoc } from "#lib/doc/create.ts";
import { planParts } from "#lib/doc/layout.ts";
import { leaveTie, setComesAfter, splitTie, tieItems } from "#lib/doc/order-constraints.ts";
import { readItems } from "#lib/doc/read.ts";
import { deleteItem, restoreItem, type Writer } from "#lib/doc/write.ts";
import { tieOf } from "#lib/plan/ties.ts";
import { exampleMove, examplePlan } from "#lib/rules/define/example-plan.ts";

const NAMES = ["a", "b", "c", "d", "e"] as const;

const SEED = createPlanDoc(examplePlan(NAMES.map((id) => exampleMove(id))), { carry: true });

function page(seed = SEED, clientId = 1): Writer {
  const doc = new Y.Doc();
  doc.clientID = clientId;
  Y.applyUpdate(doc, Y.encodeStateAsUpdate(seed));
  return { doc, origin: { page: clientId } };
}

function exchange(a: Writer, b: Writer): void {
  Y.applyUpdate(b.doc, Y.encodeStateAsUpdate(a.doc));
  Y.applyUpdate(a.doc, Y.encodeStateAsUpdate(b.doc));
}

/** The ties as their items, alone ones left out: "ab cd". */
function ties(w: Writer): string {
  const items = readItems(w.doc);
  const all = items.flatMap((i) =>
    i.kind === "move"
      ? [
          tieOf({ items }, i)
            .map((t) => t.id)
            .join(""),
        ]
      : [],
  );
  return [...new Set(all.filter(Boolean))].join(" ");
}
const namedBy = (w: Writer, id: string) => {
  const item = readItems(w.doc).find((i) => i.id === id);
  return item?.kind === "move" ? item.after : undefined;
};
const tied = (...pairs: [string, string][]): Writer => {
  const w = page();
  for (const [above, id] of pairs) tieItems(w, above, id, `t-${above}${id}`);
  return w;
};

describe("a tie", () => {
  test("is made, grows at either end, and two become one", () => {
    expect(ties(tied(["a", "b"]))).toBe("ab");
    expect(ties(tied(["a", "b"], ["b", "c"]))).toBe("abc");
    expect(ties(tied(["b", "c"], ["a", "b"]))).toBe("abc");
    expect(ties(tied(["a", "b"], ["c", "d"]))).toBe("ab cd");
    expect(ties(tied(["a", "b"], ["c", "d"], ["b", "c"]))).toBe("abcd");
  });

  test("is split above an item, and no item is left in a tie alone", () => {
    for (const [id, left] of [
      ["b", "bcd"],
      ["c", "ab cd"],
      ["d", "abc"],
      ["a", "abcd"],
    ] as const) {
      const w = tied(["a", "b"], ["b", "c"], ["c", "d"]);
      splitTie(w, id, "fresh");
      expect(ties(w)).toBe(left);
      const keeps = readItems(w.doc).flatMap((i) => (i.kind === "move" && i.keep ? [i.keep] : []));
      for (const keep of keeps) expect(keeps.filter((k) => k === keep).length).toBeGreaterThan(1);
    }
  });

  test("can be left by one of its items, and ends with the last but one", () => {
    const w = tied(["a", "b"], ["b", "c"]);
    leaveTie(w, "b");
    expect(ties(w)).toBe("ac");
    leaveTie(w, "a");
    expect(ties(w)).toBe("");
    expect(readItems(w.doc).some((i) => i.kind === "move" && i.keep !== undefined)).toBe(false);
  });

  test("made by two people at once: in different places both are kept, in one place the same one wins for both", () => {
    const [mine, theirs] = [page(SEED, 1), page(SEED, 2)];
    tieItems(mine, "a", "b", "mine");
    tieItems(theirs, "d", "e", "theirs");
    exchange(mine, theirs);
    expect([ties(mine), ties(theirs)]).toEqual(["ab de", "ab de"]);
    tieItems(mine, "b", "c", "mine-2");
    tieItems(theirs, "c", "d", "theirs-2");
    exchange(mine, theirs);
    expect(ties(mine)).toBe(ties(theirs));
    expect(["abc de", "ab cde"]).toContain(ties(mine));
  });
});

describe("what an item comes after", () => {
  test("is set, only once, and cleared", () => {
    const w = page();
    setComesAfter(w, "c", "b", true);
    setComesAfter(w, "c", "a", true);
    setComesAfter(w, "c", "a", true);
    setComesAfter(w, "c", "c", true);
    expect(namedBy(w, "c")).toEqual(["b", "a"]);
    setComesAfter(w, "c", "b", false);
    expect(namedBy(w, "c")).toEqual(["a"]);
    setComesAfter(w, "c", "a", false);
    expect(namedBy(w, "c")).toBeUndefined();
  });

  test("set by two people at once: both are kept, even while a third person clears another", () => {
    const first = page();
    setComesAfter(first, "e", "a", true);
    const [mine, theirs] = [page(first.doc, 2), page(first.doc, 3)];
    setComesAfter(mine, "e", "b", true);
    setComesAfter(theirs, "e", "c", true);
    setComesAfter(theirs, "e", "a", false);
    exchange(mine, theirs);
    expect([...(namedBy(mine, "e") ?? [])].sort()).toEqual(["b", "c"]);
    expect(namedBy(theirs, "e")).toEqual(namedBy(mine, "e"));
  });

  test("an item taken out holds nothing back until it is put back", () => {
    const w = page();
    setComesAfter(w, "c", "a", true);
    setComesAfter(w, "c", "b", true);
    deleteItem(w, "a", 1);
    expect(namedBy(w, "c")).toEqual(["b"]);
    deleteItem(w, "b", 2);
    expect(namedBy(w, "c")).toBeUndefined();
    restoreItem(w, "a");
    expect(namedBy(w, "c")).toEqual(["a"]);
  });

  test("a document with an older list is read, and continues with flat keys", () => {
    const w = page();
    planParts(w.doc).items.get("d")?.set("after", ["b", "a"]);
    expect(namedBy(w, "d")).toEqual(["b", "a"]);
    setComesAfter(w, "d", "c", true);
    setComesAfter(w, "d", "b", false);
    expect(namedBy(w, "d")).toEqual(["a", "c"]);
  });
});
