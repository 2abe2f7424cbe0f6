/**
 * [INV-28] A pin shows its words, what they became, or that they were deleted: never words of another line, whatever three
 * people write. Every letter of a line is a character of its own, so that a test can tell whose letters are shown; one line
 * stands twice, and every line says from which it came.
 */
import { describe, expect, it } from "vitest";
import * as Y from "yjs";
import { createPlanDoc } from "#lib/doc/create.ts";
import { scriptOf } from "#lib/doc/read.ts";
import { deleteItem, restoreItem } from "#lib/doc/write.ts";
import { flatLineAt, flatScript } from "#lib/margin/flat-script.ts";
import { type Pin, pinOf, pinWords, type WordsAnchor } from "#lib/margin/pin.ts";
import { Dice } from "#tests/support/dice.ts";
import { often } from "#tests/support/long.ts";
import { planWithScript } from "../unit/editor/plan-with-script.ts";

const LINES = 6;
const LETTERS = 40;
const FIRST_LETTER = 0x4e00;
/** The last line has the words of the first. */
const ownText = (line: number): string =>
  Array.from({ length: LETTERS }, (_, i) =>
    String.fromCodePoint(FIRST_LETTER + (line % (LINES - 1)) * LETTERS + i),
  ).join("");
const LINEAGE = "data-lineage";

interface Pinned {
  readonly anchor: WordsAnchor;
  readonly line: number;
}

function script(doc: Y.Doc): Y.XmlFragment {
  const found = scriptOf(doc, "row");
  if (!found) throw new Error("the item has a script");
  return found;
}
const linesOf = (doc: Y.Doc): Y.XmlElement[] =>
  script(doc)
    .toArray()
    .filter((line): line is Y.XmlElement => line instanceof Y.XmlElement);
const textOf = (line: Y.XmlElement): Y.XmlText | undefined => {
  const first: unknown = line.get(0);
  return first instanceof Y.XmlText ? first : undefined;
};
const lineageOf = (line: Y.XmlElement | undefined): string[] => (line?.getAttribute(LINEAGE) ?? "").split(" ");

function newLine(words: string, lineage: string): Y.XmlElement {
  const line = new Y.XmlElement("cueLine");
  line.setAttribute("kind", "form");
  line.setAttribute(LINEAGE, lineage);
  line.insert(0, [new Y.XmlText(words)]);
  return line;
}

/** Three copies of one script that begin alike, and pins on words of every line. */
function begin(throws: (max: number) => number) {
  const first = createPlanDoc(
    planWithScript(Array.from({ length: LINES }, (_, i) => ({ kind: "form", text: ownText(i) }))),
    {
      carry: true,
    },
  );
  linesOf(first).forEach((line, i) => {
    line.setAttribute(LINEAGE, String(i));
  });
  const docs = [first, new Y.Doc(), new Y.Doc()];
  for (const doc of docs.slice(1)) Y.applyUpdate(doc, Y.encodeStateAsUpdate(first));
  const starts = flatScript(script(first)).lineStarts;
  const pins = Array.from({ length: LINES * 3 }, (_, i): Pinned => {
    const line = i % LINES;
    const from = (starts[line] ?? 0) + throws(20);
    const anchor = pinWords(script(first), "row", from, from + 2 + throws(17));
    if (!anchor) throw new Error("there are words");
    return { anchor, line };
  });
  return { docs, pins };
}

/** One person's act, as the editor makes them. */
function edit(doc: Y.Doc, throws: (max: number) => number): void {
  const fragment = script(doc);
  const lines = linesOf(doc);
  const at = throws(Math.max(1, lines.length));
  const line = lines[at];
  const text = line && textOf(line);
  doc.transact(() => {
    const act = throws(12);
    if (act === 0) return fragment.insert(throws(lines.length + 1), [newLine(String(throws(1000)), "typed")]);
    if (act === 11) return throws(2) === 0 ? takeOutAndBack(doc) : undefined;
    if (!line || !text) return;
    if (act === 1 && lines.length > 2 && throws(3) === 0) return fragment.delete(at, 1);
    if (act === 2) return split(fragment, at, text, throws(text.length + 1));
    if (act === 3 && at > 0) return join(fragment, at, lines);
    if (act < 8) return text.insert(throws(text.length + 1), String(throws(1000)));
    if (text.length > 0) {
      const from = throws(text.length);
      text.delete(from, Math.min(text.length - from, 1 + throws(6)));
    }
  });
}

function takeOutAndBack(doc: Y.Doc): void {
  deleteItem({ doc, origin: null }, "row", 1);
  restoreItem({ doc, origin: null }, "row");
}

function split(fragment: Y.XmlFragment, at: number, text: Y.XmlText, where: number): void {
  const tail = text.toString().slice(where);
  const lineage = lineageOf(fragment.get(at) as Y.XmlElement).join(" "); // a line
  text.delete(where, text.length - where);
  fragment.insert(at + 1, [newLine(tail, lineage)]);
}

/** The line goes on at the end of the one before it. */
function join(fragment: Y.XmlFragment, at: number, lines: readonly Y.XmlElement[]): void {
  const [before, line] = [lines[at - 1], lines[at]];
  const [end, words] = [before && textOf(before), line && textOf(line)?.toString()];
  if (!before || !end || words === undefined) return;
  end.insert(end.length, words);
  before.setAttribute(LINEAGE, [...new Set([...lineageOf(before), ...lineageOf(line)])].join(" "));
  fragment.delete(at, 1);
}

function exchange(docs: readonly Y.Doc[], throws: (max: number) => number): void {
  const [from, to] = [docs[throws(docs.length)], docs[throws(docs.length)]];
  if (from && to && from !== to) Y.applyUpdate(to, Y.encodeStateAsUpdate(from, Y.encodeStateVector(to)));
}

const isTyped = (letter: string): boolean => /[\d\s]/.test(letter);

/** What must hold of a pin in one copy of the script. */
function check(doc: Y.Doc, { anchor, line }: Pinned): Pin["state"] {
  const pin = pinOf(doc, anchor);
  const flat = flatScript(script(doc));
  if (pin.state === "gone") return pin.state;
  const shown = flat.text.slice(pin.from, pin.to);
  const own = new Set(anchor.quote);
  expect(
    [...shown].filter((letter) => !isTyped(letter) && !own.has(letter)),
    "letters of other words",
  ).toEqual([]);
  expect(shown.trim()).not.toBe("");
  if (pin.state === "here") expect(shown).toBe(anchor.quote);
  else expect(pin.now).not.toBe(anchor.quote);
  for (let at = flatLineAt(flat, pin.from); at <= flatLineAt(flat, pin.to - 1); at++) {
    const lineage = lineageOf(linesOf(doc)[at]);
    const typedInside = lineage.join() === "typed" && at > flatLineAt(flat, pin.from);
    expect(typedInside || lineage.includes(String(line)), `line ${at} came from ${lineage}, the pin from ${line}`).toBe(
      true,
    );
  }
  return pin.state;
}

describe("[INV-28] pins", () => {
  it("never show another line's words, whatever three people write", () => {
    const seen = { here: 0, changed: 0, gone: 0 };
    for (let seed = 1; seed <= 5; seed++) {
      const rolled = new Dice(seed);
      const throws = (max: number) => rolled.upTo(max);
      const { docs, pins } = begin(throws);
      for (let step = 0; step < often(150, 1000); step++) {
        const doc = docs[throws(docs.length)];
        if (!doc) continue;
        edit(doc, throws);
        if (throws(3) === 0) exchange(docs, throws);
        for (const pin of pins) seen[check(doc, pin)]++;
      }
      for (const from of docs) for (const to of docs) Y.applyUpdate(to, Y.encodeStateAsUpdate(from));
      for (const pin of pins) {
        const states = docs.map((doc) => pinOf(doc, pin.anchor));
        expect(states[1], "every copy shows the same").toEqual(states[0]);
        expect(states[2]).toEqual(states[0]);
      }
    }
    for (const state of ["here", "changed", "gone"] as const) expect(seen[state], state).toBeGreaterThan(100);
  });
});
