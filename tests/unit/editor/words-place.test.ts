/** Where words of a plan's line stand in the editor, and when a line begins as people set it. */
import { describe, expect, it } from "vitest";
import * as Y from "yjs";
import { createPlanDoc } from "#lib/doc/create.ts";
import { readItemById, scriptOf } from "#lib/doc/read.ts";
import { setLineBegin } from "#lib/doc/write.ts";
import { lineText, placeOfWords, wordedLine } from "#lib/editor/lines.ts";
import { scriptSchema } from "#lib/editor/nodes.ts";
import type { LineBegin, ScriptLine } from "#lib/plan/schema.ts";
import { planWithScript } from "./plan-with-script.ts";

const schema = scriptSchema();
const line = (...content: (string | { field: string })[]) =>
  schema.node(
    "cueLine",
    { kind: "setup" },
    content.map((part) =>
      typeof part === "string" ? schema.text(part) : schema.node("liveField", { name: part.field }),
    ),
  );

describe("words of a line in the editor", () => {
  const doc = schema.node("doc", null, [
    line(),
    line("Carriage home."),
    line("A {brace}, now on ", { field: "springs" }, ", face the back."),
  ]);
  const shown = (index: number, words: string) => {
    const found = wordedLine(doc, index);
    if (!found) throw new Error("no such line");
    const at = lineText(found.node).indexOf(words);
    const { from, to } = placeOfWords(found, { from: at, to: at + words.length });
    return doc.textBetween(from, to, null, (leaf) => `<${String(leaf.attrs.name)}>`);
  };

  it("are found past lines without words, braces and live fields", () => {
    expect(shown(0, "home")).toBe("home");
    expect(shown(1, "face the back")).toBe("face the back");
    expect(shown(1, "{{brace}")).toBe("{brace}");
  });
  it("take in a live field as a whole", () => {
    expect(shown(1, "on {springs}")).toBe("on <springs>");
    expect(shown(1, "prings}, face")).toBe("<springs>, face");
  });
  it("are nowhere in a line that is not there", () => {
    expect(wordedLine(doc, 2)).toBeNull();
  });
});

describe("when a line begins", () => {
  const open = (...script: ScriptLine[]) => {
    const doc = createPlanDoc(planWithScript(script), { carry: true });
    const fragment = scriptOf(doc, "row");
    if (!fragment) throw new Error("no script");
    const beginOf = (index: number): LineBegin | undefined => {
      const item = readItemById(doc, "row");
      return item?.kind === "move" ? item.script?.[index]?.at : undefined;
    };
    return { doc, fragment, beginOf };
  };
  const form = (text: string): ScriptLine => ({ kind: "form", text });

  it("is set and removed, as one step of undo each", () => {
    const { doc, fragment, beginOf } = open(form("Long neck."), form("Soft knees."));
    const undo = new Y.UndoManager(fragment, { trackedOrigins: new Set(["me"]), captureTimeout: 0 });
    const second = fragment.get(1) as Y.XmlElement;
    setLineBegin({ doc, origin: "me" }, second, { afterSeconds: 20 });
    setLineBegin({ doc, origin: "me" }, second, { leftSeconds: 15 });
    expect([beginOf(0), beginOf(1)]).toEqual([undefined, { leftSeconds: 15 }]);
    undo.undo();
    expect(beginOf(1)).toEqual({ afterSeconds: 20 });
    setLineBegin({ doc, origin: "me" }, second, undefined);
    expect(beginOf(1)).toBeUndefined();
  });

  it("goes with the line when somebody else adds one before it, and nowhere once the line is gone", () => {
    const { doc, fragment, beginOf } = open(form("Long neck."), form("Soft knees."));
    const second = fragment.get(1) as Y.XmlElement;
    fragment.insert(0, [new Y.XmlElement("cueLine")]);
    setLineBegin({ doc, origin: "me" }, second, { afterSeconds: 20 });
    expect([beginOf(0), beginOf(1)]).toEqual([undefined, { afterSeconds: 20 }]);
    fragment.delete(2, 1);
    const before = Y.encodeStateVector(doc);
    setLineBegin({ doc, origin: "me" }, second, { afterSeconds: 30 });
    expect(Y.encodeStateVector(doc)).toEqual(before);
  });
});
