/** Two people take the same first draft at the same moment: every line stands there once, and no typed letter is lost. */
import { afterEach, describe, expect, it } from "vitest";
import * as Y from "yjs";
import { planUndo } from "#app/_session/plan-undo.ts";
import { TakenTwice } from "#app/_session/taken-twice.ts";
import type { ActUndo } from "#lib/client/act-undo.ts";
import { createPlanDoc } from "#lib/doc/create.ts";
import { planParts } from "#lib/doc/layout.ts";
import { readItemById } from "#lib/doc/read.ts";
import { addFirstScriptLine, addScriptLine, type Writer } from "#lib/doc/write.ts";
import type { ScriptLine } from "#lib/plan/schema.ts";
import { exampleMove, examplePlan } from "#lib/rules/define/example-plan.ts";

const DRAFT: readonly ScriptLine[] = [
  { kind: "start", text: "Press out" },
  { kind: "breath", text: "Breathe out to press" },
  { kind: "safety", text: "Wrists straight" },
];
const FIRST: ScriptLine = { kind: "setup", text: "Carriage home, {springs}." };

interface Page extends Writer {
  readonly doc: Y.Doc;
  readonly undo: ActUndo;
  readonly twice: TakenTwice;
}
const opened: Page[] = [];
afterEach(() => {
  for (const { undo, twice } of opened.splice(0)) {
    undo.destroy();
    twice.end();
  }
});

function pages(...clients: number[]): Page[] {
  const seed = Y.encodeStateAsUpdate(
    createPlanDoc(examplePlan([exampleMove("a", { script: [] }), exampleMove("b", { script: [] })]), { carry: true }),
  );
  return clients.map((clientId) => {
    const doc = new Y.Doc();
    doc.clientID = clientId;
    Y.applyUpdate(doc, seed);
    const origin = { page: clientId };
    const undo = planUndo({ doc, origin }, () => undefined);
    const page = { doc, origin, undo, twice: new TakenTwice(doc, undo.manager) };
    opened.push(page);
    return page;
  });
}

function take(page: Page): void {
  page.twice.during(["a", "b"], () => {
    page.undo.step(() =>
      page.doc.transact(() => {
        for (const id of ["a", "b"]) {
          addFirstScriptLine(page, id, FIRST);
          for (const line of DRAFT) addScriptLine(page, id, line);
        }
      }, page.origin),
    );
    return true;
  });
}

/** Everybody hears everybody until nothing is new. */
function meet(all: readonly Page[]): void {
  for (let round = 0; round < 3; round++)
    for (const from of all)
      for (const to of all)
        if (from !== to) Y.applyUpdate(to.doc, Y.encodeStateAsUpdate(from.doc, Y.encodeStateVector(to.doc)));
}

const scriptOf = ({ doc }: Page, id: string): readonly ScriptLine[] => {
  const item = readItemById(doc, id);
  return item?.kind === "move" ? (item.script ?? []) : [];
};

function typeIn(page: Page, id: string, at: number, letters: string): void {
  const script = planParts(page.doc).items.get(id)?.get("script") as Y.XmlFragment;
  const lines = script.toArray().filter((node) => node instanceof Y.XmlElement && node.toString().includes("Press"));
  ((lines[at] as Y.XmlElement).get(0) as Y.XmlText).insert(0, letters);
}

describe("a draft that several people take at the same moment", () => {
  it.each([
    [1, 2],
    [2, 1],
    [7, 3, 5],
  ])("stands there once (pages %i, %i)", (...clients) => {
    const all = pages(...clients);
    for (const page of all) take(page);
    meet(all);
    for (const page of all) for (const id of ["a", "b"]) expect(scriptOf(page, id)).toEqual([FIRST, ...DRAFT]);
  });

  it("keeps a line that somebody went on typing in before they heard of the other", () => {
    const [a, b] = pages(1, 2) as [Page, Page];
    take(a);
    take(b);
    typeIn(b, "a", 0, "Now ");
    meet([a, b]);
    const texts = scriptOf(a, "a").map(({ text }) => text);
    expect(texts).toContain("Now Press out");
    expect(texts.filter((text) => text === "Wrists straight")).toHaveLength(1);
    expect(scriptOf(b, "a")).toEqual(scriptOf(a, "a"));
  });

  it("is gone when both undo it, and its redo brings it back once", () => {
    const all = pages(1, 2);
    for (const page of all) take(page);
    meet(all);
    for (const { undo } of all) undo.undo();
    meet(all);
    for (const page of all) expect(scriptOf(page, "a")).toEqual([]);
    for (const { undo } of all) undo.redo();
    meet(all);
    for (const page of all) expect(scriptOf(page, "a")).toEqual([FIRST, ...DRAFT]);
  });

  it("is not undone in place of what its second taker did before", () => {
    const [a, b] = pages(1, 2) as [Page, Page];
    b.undo.step(() => b.doc.transact(() => addScriptLine(b, "b", { kind: "form", text: "Tall" }), b.origin));
    take(a);
    take(b);
    meet([a, b]);
    const answer = b.undo.undo();
    expect(answer.done).toBe(false);
    expect(answer.stood).toHaveLength(1);
    expect(scriptOf(b, "b")).toContainEqual({ kind: "form", text: "Tall" });
    expect(b.undo.undo().done).toBe(true);
    expect(scriptOf(b, "b")).not.toContainEqual({ kind: "form", text: "Tall" });
  });

  it("leaves alone a line that somebody typed later with the same words", () => {
    const [a, b] = pages(1, 2) as [Page, Page];
    take(b);
    meet([a, b]);
    addScriptLine(a, "a", { kind: "start", text: "Press" });
    meet([a, b]);
    const script = planParts(a.doc).items.get("a")?.get("script") as Y.XmlFragment;
    ((script.get(script.length - 1) as Y.XmlElement).get(0) as Y.XmlText).insert(5, " out");
    meet([a, b]);
    expect(scriptOf(b, "a").filter(({ text }) => text === "Press out")).toHaveLength(2);
  });
});
