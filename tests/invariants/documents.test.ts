/** Invariants of the shared document that no other test quotes: seeding, reading, moving. */
import fc from "fast-check";
import { afterEach, beforeEach, describe, expect, test } from "vitest";
import * as Y from "yjs";
import { createPlanDoc } from "#lib/doc/create.ts";
import { CUE_LINE, planParts } from "#lib/doc/layout.ts";
import { orderedIds, readDeleted, readItems, readPlan, scriptOf } from "#lib/doc/read.ts";
import { addScriptLine, deleteItem, insertItem, moveItem, restoreItem } from "#lib/doc/write.ts";
import type { MoveItem, Plan } from "#lib/plan/schema.ts";
import { type DocPages, docPages, reaches } from "#tests/support/doc-pages.ts";

const item = (id: string): MoveItem => ({
  id,
  kind: "move",
  move: "row",
  side: "both",
  seconds: 60,
  springs: { a: 1 },
});
const plan = (ids: readonly string[]): Plan => ({
  format: "springline.plan/1",
  title: "Rows",
  lengthSeconds: 600,
  equipment: { name: "Machines", carriageTravelMm: 1000, springs: [] },
  moves: {},
  items: ids.map(item),
});

/** Everything that `doc` says from now on. */
function updatesOf(doc: Y.Doc): Uint8Array[] {
  const updates: Uint8Array[] = [];
  doc.on("update", (update: Uint8Array) => updates.push(update));
  return updates;
}

describe("seeding", () => {
  let pages: DocPages;
  beforeEach(async () => {
    pages = await docPages();
    pages.server.addPlan("p");
  });
  afterEach(() => pages.stop());

  test("[INV-04] pages that open one new plan at once write nothing: it has each of its items once", async () => {
    const opened = ["ines", "marta", "jonas"].map((user) => pages.openPlan(user));
    for (const page of opened) await reaches(page, "saved");
    const [first, ...others] = opened.map(({ session }) => session);
    if (!first) throw new Error("no page");
    const written = Y.decodeStateVector(Y.encodeStateVector(first.doc));
    for (const { doc } of [first, ...others]) {
      expect(written.has(doc.clientID)).toBe(false);
      expect(Y.encodeStateVector(doc)).toEqual(Y.encodeStateVector(first.doc));
    }
    const ids = orderedIds(first.doc);
    expect(ids.length).toBeGreaterThan(0);
    expect(new Set(ids).size).toBe(ids.length);
  });
});

describe("reading", () => {
  const studio = { equipment: plan([]).equipment, moves: {} };

  test("[INV-05] says nothing, and leaves what it does not know where it is", () => {
    const doc = createPlanDoc(plan(["a", "b"]), { carry: true });
    const { items, meta } = planParts(doc);
    addScriptLine({ doc, origin: "me" }, "a", { kind: "breath", text: "Breathe out as you push." });
    items.get("a")?.set("from-a-later-program", { deep: [1, 2] });
    items.set("no item at all", new Y.Map([["kind", "somersault"]]));
    meta.set("later", true);
    scriptOf(doc, "a")?.push([new Y.XmlElement("drawing")]);
    const before = Y.encodeStateAsUpdate(doc);
    const updates = updatesOf(doc);

    expect(readPlan(doc, studio).items.map(({ id }) => id)).toEqual(["a", "b"]);
    readItems(doc);
    readDeleted(doc);

    expect(updates).toEqual([]);
    expect(Y.encodeStateAsUpdate(doc)).toEqual(before);
    expect(items.get("a")?.get("from-a-later-program")).toEqual({ deep: [1, 2] });
    expect(items.get("no item at all")?.get("kind")).toBe("somersault");
    const nodes = scriptOf(doc, "a")?.toArray() ?? [];
    expect(nodes.map((node) => (node instanceof Y.XmlElement ? node.nodeName : "text"))).toEqual([
      CUE_LINE,
      CUE_LINE,
      "drawing",
    ]);
  });
});

describe("moving", () => {
  const IDS = ["a", "b", "c", "d", "e"];
  const act = fc.record({
    who: fc.constantFrom(0, 1),
    id: fc.constantFrom(...IDS),
    after: fc.option(fc.constantFrom(...IDS), { nil: null }),
    what: fc.constantFrom("move", "type", "take out", "put back"),
  });

  test("[INV-06] loses no item and no word, and never makes a map again, whatever two people do at once", () => {
    fc.assert(
      fc.property(fc.array(act, { maxLength: 24 }), (acts) => {
        const seeded = Y.encodeStateAsUpdate(createPlanDoc(plan(IDS), { carry: false }));
        const docs = [new Y.Doc(), new Y.Doc()] as const;
        for (const doc of docs) Y.applyUpdate(doc, seeded);
        const maps = docs.map((doc) => IDS.map((id) => planParts(doc).items.get(id)));
        const typed = new Map<string, string[]>();
        acts.forEach(({ who, id, after, what }, n) => {
          const w = { doc: docs[who] as Y.Doc, origin: who };
          if (what === "move") moveItem(w, id, after);
          else if (what === "take out") deleteItem(w, id, n);
          else if (what === "put back") restoreItem(w, id);
          else {
            addScriptLine(w, id, { kind: "form", text: `line ${n}` });
            typed.set(id, [...(typed.get(id) ?? []), `line ${n}`]);
          }
        });
        const [one, two] = docs;
        Y.applyUpdate(one, Y.encodeStateAsUpdate(two));
        Y.applyUpdate(two, Y.encodeStateAsUpdate(one));

        expect(orderedIds(one)).toEqual(orderedIds(two));
        docs.forEach((doc, at) => {
          // The very same maps: one that was deleted and put in again would have lost what others write in it.
          expect(IDS.filter((id, n) => planParts(doc).items.get(id) !== maps[at]?.[n])).toEqual([]);
          for (const [id, lines] of typed) {
            const words = scriptOf(doc, id)?.toString() ?? "";
            for (const line of lines) expect(words).toContain(line);
          }
        });
      }),
      { numRuns: 100 },
    );
  });

  test("[INV-06] an item that is put in between two others stands there for both, its neighbours untouched", () => {
    const doc = createPlanDoc(plan(["a", "b"]), { carry: false });
    const before = planParts(doc).items.get("a")?.toJSON();
    insertItem({ doc, origin: "me" }, "a", item("between"));
    expect(orderedIds(doc)).toEqual(["a", "between", "b"]);
    expect(planParts(doc).items.get("a")?.toJSON()).toEqual(before);
  });
});
