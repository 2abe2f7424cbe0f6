import { afterEach, describe, expect, test } from "vitest";
import * as Y from "yjs";
import { planUndo } from "#app/_session/plan-undo.ts";
import type { ActUndo } from "#lib/client/act-undo.ts";
import { createPlanDoc } from "#lib/doc/create.ts";
import { planParts } from "#lib/doc/layout.ts";
import { readDeleted, readItems, readPlan } from "#lib/doc/read.ts";
import { addScriptLine, insertItem, setHead, setItemField, setText, type Writer } from "#lib/doc/write.ts";
import type { MoveItem, Plan } from "#lib/plan/schema.ts";

const plank: MoveItem = { id: "plank", kind: "move", move: "plank", side: "both", seconds: 60, springs: { light: 1 } };
const plan: Plan = {
  format: "springline.plan/1",
  title: "Trunk",
  lengthSeconds: 1500,
  equipment: { name: "Six machines", carriageTravelMm: 1000, springs: [] },
  moves: {},
  items: [plank],
};
const opened: Page[] = [];
afterEach(() => {
  for (const page of opened.splice(0)) page.undo.destroy();
});

interface Page {
  readonly writer: Writer;
  readonly undo: ActUndo;
}

function openPage(from: Y.Doc): Page {
  const doc = new Y.Doc();
  Y.applyUpdate(doc, Y.encodeStateAsUpdate(from), "server");
  const writer = { doc, origin: { page: doc.clientID } };
  const page = {
    writer,
    undo: planUndo(writer, () => undefined),
  };
  opened.push(page);
  return page;
}

const exchange = (a: Page, b: Page) => {
  Y.applyUpdate(b.writer.doc, Y.encodeStateAsUpdate(a.writer.doc), "server");
  Y.applyUpdate(a.writer.doc, Y.encodeStateAsUpdate(b.writer.doc), "server");
};
const seconds = (page: Page) => readItems(page.writer.doc).map((i) => (i.kind === "heading" ? null : i.seconds));

describe("undo of a page", () => {
  test("[INV-08] undoes one's own act and leaves what others did", () => {
    const seed = createPlanDoc(plan, { carry: true });
    const [mine, theirs] = [openPage(seed), openPage(seed)];
    mine.undo.step(() => setItemField(mine.writer, "plank", "seconds", 45));
    theirs.undo.step(() => setHead(theirs.writer, "lengthSeconds", 1800));
    exchange(mine, theirs);
    mine.undo.undo();
    expect(seconds(mine)).toEqual([60]);
    expect(readPlan(mine.writer.doc, { moves: {}, equipment: plan.equipment }).lengthSeconds).toBe(1800);
    mine.undo.redo();
    expect(seconds(mine)).toEqual([45]);
  });

  test("two acts in a row are two steps, and typing between them is its own", () => {
    const page = openPage(createPlanDoc(plan, { carry: true }));
    page.undo.step(() => setItemField(page.writer, "plank", "seconds", 50));
    page.undo.step(() => setItemField(page.writer, "plank", "seconds", 55));
    setText(page.writer, planParts(page.writer.doc).title, "Trunk day");
    page.undo.undo();
    expect(planParts(page.writer.doc).title.toString()).toBe("Trunk");
    expect(seconds(page)).toEqual([55]);
    page.undo.undo();
    expect(seconds(page)).toEqual([50]);
  });

  test("what the document began with cannot be undone", () => {
    const page = openPage(createPlanDoc(plan, { carry: true }));
    expect(page.undo.canUndo).toBe(false);
    page.undo.undo();
    expect(readItems(page.writer.doc)).toHaveLength(1);
  });

  test("[INV-07] an item others wrote in is taken out, not erased, when its creation is undone", () => {
    const seed = createPlanDoc(plan, { carry: true });
    const [mine, theirs] = [openPage(seed), openPage(seed)];
    mine.undo.step(() => insertItem(mine.writer, "plank", { ...plank, id: "row" }));
    exchange(mine, theirs);
    addScriptLine(theirs.writer, "row", { kind: "safety", text: "Wrists under shoulders." });
    exchange(mine, theirs);
    mine.undo.undo();
    expect(readItems(mine.writer.doc).map((i) => i.id)).toEqual(["plank"]);
    const [gone] = readDeleted(mine.writer.doc);
    expect(gone?.item).toMatchObject({ id: "row", script: [{ kind: "safety", text: "Wrists under shoulders." }] });
    mine.undo.redo();
    expect(readItems(mine.writer.doc).map((i) => i.id)).toEqual(["plank", "row"]);
  });

  test("an item nobody else wrote in goes, and comes back with redo", () => {
    const page = openPage(createPlanDoc(plan, { carry: true }));
    page.undo.step(() => insertItem(page.writer, "plank", { ...plank, id: "row" }));
    page.undo.undo();
    expect(readItems(page.writer.doc)).toHaveLength(1);
    expect(readDeleted(page.writer.doc)).toHaveLength(0);
    page.undo.redo();
    expect(readItems(page.writer.doc).map((i) => i.id)).toEqual(["plank", "row"]);
    page.undo.undo();
    expect(readItems(page.writer.doc)).toHaveLength(1);
    expect(page.undo.canUndo).toBe(false);
  });

  test("[INV-07] words somebody wrote offline in an item whose creation was undone meanwhile can be put back", () => {
    const seed = createPlanDoc(plan, { carry: true });
    const [mine, theirs] = [openPage(seed), openPage(seed)];
    mine.undo.step(() => insertItem(mine.writer, "plank", { ...plank, id: "row" }));
    exchange(mine, theirs);
    mine.undo.undo();
    addScriptLine(theirs.writer, "row", { kind: "safety", text: "Wrists under shoulders." });
    exchange(mine, theirs);
    for (const page of [mine, theirs]) {
      expect(readItems(page.writer.doc).map((i) => i.id)).toEqual(["plank"]);
      expect(readDeleted(page.writer.doc).map((gone) => gone.item)).toMatchObject([
        { id: "row", script: [{ kind: "safety", text: "Wrists under shoulders." }] },
      ]);
    }
  });
});
