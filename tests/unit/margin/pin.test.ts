import fc from "fast-check";
import { describe, expect, it } from "vitest";
import * as Y from "yjs";
import { createPlanDoc } from "#lib/doc/create.ts";
import { scriptOf } from "#lib/doc/read.ts";
import { deleteItem, moveItem } from "#lib/doc/write.ts";
import { flatScript } from "#lib/margin/flat-script.ts";
import { MAX_QUOTE, pinOf, pinWords, type WordsAnchor } from "#lib/margin/pin.ts";
import type { ScriptLine } from "#lib/plan/schema.ts";
import { planWithScript } from "../editor/plan-with-script.ts";

function open(lines: ScriptLine[]) {
  const doc = createPlanDoc(planWithScript(lines), { carry: true });
  const script = scriptOf(doc, "row");
  if (!script) throw new Error("the item has a script");
  return { doc, script };
}
const textIn = (script: Y.XmlFragment, line: number, child = 0): Y.XmlText => {
  const element = script.get(line);
  const text: unknown = element instanceof Y.XmlElement ? element.get(child) : null;
  if (!(text instanceof Y.XmlText)) throw new Error("there is text");
  return text;
};
function pin(script: Y.XmlFragment, words: string): WordsAnchor {
  const at = flatScript(script).text.indexOf(words);
  const anchor = pinWords(script, "row", at, at + words.length);
  if (!anchor) throw new Error("the words are there");
  return anchor;
}
const wordsAt = (script: Y.XmlFragment, p: { from: number; to: number }) => flatScript(script).text.slice(p.from, p.to);

const LINES: ScriptLine[] = [
  { kind: "setup", text: "Kneel facing the back, {springs} on." },
  { kind: "form", text: "Elbows stay close, long neck." },
  { kind: "safety", text: "Sore knees: stand beside the carriage." },
];

describe("pins on words", () => {
  it("quote the selection, with live fields by name and no whitespace at the ends", () => {
    const { script } = open(LINES);
    const { text } = flatScript(script);
    expect(text.split("\n").length).toBe(3);
    expect(pinWords(script, "row", 0, text.indexOf("\n") + 1)?.quote).toBe("Kneel facing the back, {springs} on.");
    const from = text.indexOf(" stay");
    expect(pinWords(script, "row", from, from + " stay ".length)?.quote).toBe("stay");
  });

  it("refuse an empty selection and a whole book", () => {
    const { script } = open([{ kind: "form", text: "word ".repeat(300) }]);
    expect(pinWords(script, "row", 4, 5)).toBeNull();
    expect(pinWords(script, "row", 3, 3)).toBeNull();
    expect(pinWords(script, "row", 0, MAX_QUOTE + 50)).toBeNull();
  });

  it("follow words while others write before, after and around them", () => {
    const { doc, script } = open(LINES);
    const anchor = pin(script, "stay close");
    textIn(script, 1).insert(0, "Now: ");
    textIn(script, 1).insert(textIn(script, 1).length, " Breathe.");
    textIn(script, 0).insert(3, "xyz");
    const p = pinOf(doc, anchor);
    expect(p.state).toBe("here");
    if (p.state === "here") expect(wordsAt(script, p)).toBe("stay close");
  });

  it("leave out letters typed right at their ends", () => {
    const { doc, script } = open(LINES);
    const anchor = pin(script, "stay");
    const text = textIn(script, 1);
    const at = text.toString().indexOf("stay");
    text.insert(at + 4, "ing");
    text.insert(at, "over");
    const p = pinOf(doc, anchor);
    expect(p.state).toBe("here");
    if (p.state === "here") expect(wordsAt(script, p)).toBe("stay");
  });

  it("say that words were changed, and what they are now", () => {
    const { doc, script } = open(LINES);
    const anchor = pin(script, "stay close");
    const text = textIn(script, 1);
    text.delete(text.toString().indexOf("close"), 1);
    expect(pinOf(doc, anchor)).toMatchObject({ state: "changed", now: "stay lose" });
  });

  it("say that words are gone when they, their line or their item went, and are back after an undo", () => {
    const { doc, script } = open(LINES);
    const manager = new Y.UndoManager(doc.getMap("items"), { trackedOrigins: new Set(["me"]) });
    const anchor = pin(script, "long neck");
    const text = textIn(script, 1);
    doc.transact(() => text.delete(text.toString().indexOf("long"), 9), "me");
    expect(pinOf(doc, anchor)).toEqual({ state: "gone" });
    manager.undo();
    expect(pinOf(doc, anchor).state).toBe("here");
    script.delete(1, 1);
    expect(pinOf(doc, anchor)).toEqual({ state: "gone" });
    expect(pinOf(doc, { ...anchor, itemId: "no-such-item" })).toEqual({ state: "gone" });
  });

  it("find their words again in the line they were split into", () => {
    const { doc, script } = open(LINES);
    const anchor = pin(script, "long neck");
    const text = textIn(script, 1);
    const at = text.toString().indexOf("long");
    const moved = new Y.XmlElement("cueLine");
    moved.setAttribute("kind", "form");
    moved.insert(0, [new Y.XmlText(text.toString().slice(at))]);
    doc.transact(() => {
      text.delete(at, text.length - at);
      script.insert(2, [moved]);
    });
    const p = pinOf(doc, anchor);
    expect(p.state).toBe("here");
    if (p.state === "here") expect(wordsAt(script, p)).toBe("long neck");
  });

  it("do not guess when the quote occurs twice", () => {
    const { doc, script } = open([
      { kind: "form", text: "shoulders down" },
      { kind: "focus", text: "shoulders down, shoulders down" },
    ]);
    const anchor = pin(script, "shoulders down");
    script.delete(0, 1);
    expect(pinOf(doc, anchor)).toEqual({ state: "gone" });
  });

  it("hold over two lines, and over a live field", () => {
    const { doc, script } = open(LINES);
    const { text } = flatScript(script);
    const anchor = pinWords(script, "row", text.indexOf("back"), text.indexOf("stay") + 4);
    expect(anchor?.quote).toBe("back, {springs} on. Elbows stay");
    if (!anchor) return;
    expect(pinOf(doc, anchor).state).toBe("here");
    script.delete(0, 1);
    expect(pinOf(doc, anchor)).toMatchObject({ state: "changed", now: "Elbows stay" });
  });

  it("hold on to a lone live field", () => {
    const { doc, script } = open(LINES);
    const at = flatScript(script).text.indexOf("\uFFFC");
    const anchor = pinWords(script, "row", at, at + 1);
    expect(anchor?.quote).toBe("{springs}");
    if (!anchor) return;
    textIn(script, 0).insert(0, "First ");
    expect(pinOf(doc, anchor).state).toBe("here");
    const line = script.get(0);
    if (line instanceof Y.XmlElement) line.delete(1, 1);
    expect(pinOf(doc, anchor)).toEqual({ state: "gone" });
  });

  it("stay while their item moves or is taken out", () => {
    const { doc, script } = open(LINES);
    const anchor = pin(script, "Elbows");
    moveItem({ doc, origin: null }, "row", null);
    expect(pinOf(doc, anchor).state).toBe("here");
    deleteItem({ doc, origin: null }, "row", 1);
    expect(pinOf(doc, anchor).state).toBe("here");
  });

  it("never stop the page, whatever an anchor holds", () => {
    const { doc } = open(LINES);
    fc.assert(
      fc.property(fc.string(), fc.base64String(), fc.string(), (from, to, quote) => {
        expect(["here", "changed", "gone"]).toContain(
          pinOf(doc, { kind: "words", itemId: "row", from, to, quote }).state,
        );
      }),
      { seed: 3, numRuns: 300 },
    );
  });

  it("read without writing", () => {
    const { doc, script } = open(LINES);
    const anchor = pin(script, "Elbows");
    let updates = 0;
    doc.on("update", () => updates++);
    pinOf(doc, anchor);
    expect(updates).toBe(0);
  });

  it("mean the same words on another replica after both wrote", () => {
    const { doc, script } = open(LINES);
    const anchor = pin(script, "stay close");
    const other = new Y.Doc();
    Y.applyUpdate(other, Y.encodeStateAsUpdate(doc));
    const theirs = scriptOf(other, "row");
    if (!theirs) throw new Error("the item came along");
    textIn(theirs, 1).insert(0, "Theirs. ");
    textIn(script, 1).insert(0, "Mine. ");
    Y.applyUpdate(other, Y.encodeStateAsUpdate(doc));
    Y.applyUpdate(doc, Y.encodeStateAsUpdate(other));
    expect(pinOf(doc, anchor)).toEqual(pinOf(other, anchor));
    expect(pinOf(doc, anchor).state).toBe("here");
  });
});
