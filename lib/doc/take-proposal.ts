/**
 * Writes the parts of a proposal that still fit, as one transaction, and notes on the item which parts were taken. Words
 * are changed where they differ and nowhere else, so that what others type in the same line at the same moment survives.
 */
import * as Y from "yjs";
import { parseScriptText } from "#lib/plan/script-text.ts";
import { hunksOf } from "#lib/plan-diff/hunks.ts";
import { fits, type ProposalGround, type Step } from "#lib/proposal/fits.ts";
import type { LineIds, LineWords, ProposalPart } from "#lib/proposal/parts.ts";
import { inTurn, type ScriptStep } from "#lib/proposal/script-steps.ts";
import { wordTokens } from "#lib/proposal/words-diff.ts";
import { LIVE_FIELD, PROPOSAL_KEY, planParts } from "./layout.ts";
import { takenProposals } from "./proposal-marks.ts";
import { readItems, scriptOf } from "./read.ts";
import { reorderItems } from "./reorder.ts";
import { lineElement, readLine } from "./script.ts";
import { act, setItemField, setSpring, type Writer, withItem } from "./write.ts";

interface Proposed {
  readonly id: string;
  readonly itemId: string | null;
  /** Those that are to be taken. */
  readonly parts: readonly ProposalPart[];
}

/** Equipment is asked for words only, which are not shown here. */
const NO_EQUIPMENT: ProposalGround["equipment"] = { name: "none", carriageTravelMm: 1, springs: [] };

/**
 * The ids of the parts that were written; none, and no mark, where no part fits any more. A part that the mark names
 * already is not written again.
 */
export function takeProposal(w: Writer, { id, itemId, parts }: Proposed): readonly string[] {
  const plan = { items: readItems(w.doc), equipment: NO_EQUIPMENT };
  const done = takenProposals(w.doc).get(id)?.parts ?? [];
  const left = parts.filter((part) => !done.includes(part.id));
  const judged = fits(plan, left, lineIdsOf(w.doc, left));
  const steps = judged.flatMap(({ step }) => step ?? []);
  const taken = judged.filter(({ state }) => state === "fits").map(({ part }) => part.id);
  if (steps.length === 0) return [];
  act(w, () => {
    for (const step of steps) if (step.on !== "script") writeValue(w, step);
    for (const item of new Set(steps.flatMap((step) => (step.on === "script" ? [step.item] : []))))
      writeScript(
        w,
        item,
        steps.flatMap((step) => (step.on === "script" && step.item === item ? [step.step] : [])),
      );
    const mark = [...done, ...taken].join(" ");
    if (itemId === null) planParts(w.doc).head.set(PROPOSAL_KEY + id, mark);
    else withItem(w, itemId, (map) => map.set(PROPOSAL_KEY + id, mark));
  });
  return taken;
}

/** The document's names of the lines that parts may be about. A name stays with its line, however its words change. */
export function lineIdsOf(doc: Y.Doc, parts: readonly ProposalPart[]): LineIds {
  const items = new Set(parts.flatMap((part) => (part.kind === "order" ? [] : [part.item])));
  return new Map([...items].map((item) => [item, lineIdsOfItem(doc, item)]));
}

/** In the order of the lines with words. */
export const lineIdsOfItem = (doc: Y.Doc, itemId: string): string[] =>
  wordedLines(scriptOf(doc, itemId)).map(({ _item }) => (_item ? `${_item.id.client}-${_item.id.clock}` : ""));

/** The lines that a plan shows. */
function wordedLines(script: Y.XmlFragment | undefined): Y.XmlElement[] {
  return (script?.toArray() ?? []).filter(
    (node): node is Y.XmlElement => node instanceof Y.XmlElement && readLine(node) !== undefined,
  );
}

function writeValue(w: Writer, step: Exclude<Step, { on: "script" }>): void {
  if (step.on === "order") reorderItems(w, step.heading, step.ids);
  else if (step.on === "spring") setSpring(w, step.item, step.spring, step.count);
  // The parts' schema says what each field may hold, and `fits` asked it.
  else setItemField(w, step.item, step.field, step.value as never);
}

function writeScript(w: Writer, itemId: string, steps: readonly ScriptStep[]): void {
  const script = scriptOf(w.doc, itemId);
  if (!script) return;
  const rows = wordedLines(script);
  const insert = (line: Y.XmlElement, after: number | null) => {
    const above = after === null ? undefined : rows[after];
    script.insert(above === undefined ? 0 : script.toArray().indexOf(above) + 1, [line]);
  };
  const remove = (line: Y.XmlElement) => {
    const at = script.toArray().indexOf(line);
    if (at >= 0) script.delete(at, 1);
  };
  for (const step of inTurn(steps)) {
    if (step.does === "add") insert(lineElement(step.words), step.after);
    else {
      const line = rows[step.row];
      if (!line) continue;
      if (step.does === "change") writeLine(line, step.words);
      else if (step.does === "remove") remove(line);
      else {
        const words = readLine(line);
        remove(line);
        const moved = words && lineElement(words);
        if (!moved) continue;
        insert(moved, step.after);
        rows[step.row] = moved;
      }
    }
  }
}

/** Makes a line read `words`, changing only the letters that differ. */
function writeLine(line: Y.XmlElement, { kind, text }: LineWords): void {
  if (line.getAttribute("kind") !== kind) line.setAttribute("kind", kind);
  const before = wordTokens(readLine(line)?.text ?? "");
  const hunks = hunksOf(before, wordTokens(text));
  const starts = [0];
  for (const token of before) starts.push((starts.at(-1) ?? 0) + unitsOf(token));
  for (const { from, to, words } of hunks.reverse()) {
    const [start, end] = [starts[from] ?? 0, starts[to] ?? 0];
    writeStretch(line, { start, old: before.slice(from, to).join(""), end, now: words.join("") });
  }
}

/** A live field and a brace each take one place in a line. */
const unitsOf = (token: string): number => (token === "{{" || /^\{[a-z-]+\}$/.test(token) ? 1 : token.length);

interface Stretch {
  readonly start: number;
  readonly end: number;
  readonly old: string;
  readonly now: string;
}

/** What two stretches without braces have in common at their ends is left alone. */
function writeStretch(line: Y.XmlElement, { start, end, old, now }: Stretch): void {
  const plain = !/[{}]/.test(old + now);
  const most = plain ? Math.min(old.length, now.length) : 0;
  let head = 0;
  while (head < most && old[head] === now[head]) head++;
  let tail = 0;
  while (tail < most - head && old[old.length - 1 - tail] === now[now.length - 1 - tail]) tail++;
  deleteUnits(line, start + head, end - tail);
  insertText(line, start + head, now.slice(head, now.length - tail));
}

function deleteUnits(line: Y.XmlElement, from: number, to: number): void {
  for (const { child, at, start, length } of placed(line).reverse()) {
    const [first, last] = [Math.max(from, start), Math.min(to, start + length)];
    if (last <= first) continue;
    if (child instanceof Y.XmlText) child.delete(first - start, last - first);
    else line.delete(at, 1);
  }
}

function insertText(line: Y.XmlElement, place: number, text: string): void {
  if (text === "") return;
  const parsed = parseScriptText(text);
  let at = place;
  for (const piece of parsed.ok ? parsed.pieces : [{ text }]) {
    if ("text" in piece) insertWords(line, at, piece.text);
    else insertField(line, at, piece.field);
    at += "text" in piece ? piece.text.length : 1;
  }
}

/** Beside the letter before it where there is one, so that what one person writes stays together. */
function insertWords(line: Y.XmlElement, place: number, words: string): void {
  const children = placed(line);
  const into = children.find(
    ({ child, start, length }) => child instanceof Y.XmlText && start <= place && place <= start + length,
  );
  if (into?.child instanceof Y.XmlText) into.child.insert(place - into.start, words);
  else line.insert(indexAt(children, place), [new Y.XmlText(words)]);
}

function insertField(line: Y.XmlElement, place: number, name: string): void {
  const field = new Y.XmlElement(LIVE_FIELD);
  field.setAttribute("name", name);
  const inside = placed(line).find(({ start, length }) => start < place && place < start + length);
  if (inside?.child instanceof Y.XmlText) {
    const rest = inside.child.toString().slice(place - inside.start);
    inside.child.delete(place - inside.start, rest.length);
    line.insert(inside.at + 1, [field, new Y.XmlText(rest)]);
  } else line.insert(indexAt(placed(line), place), [field]);
}

interface Placed {
  readonly child: unknown;
  /** Index among the line's children. */
  readonly at: number;
  /** Place of its first unit in the line. */
  readonly start: number;
  readonly length: number;
}

function placed(line: Y.XmlElement): Placed[] {
  let start = 0;
  return line.toArray().map((child, at) => {
    const length = child instanceof Y.XmlText ? child.length : 1;
    start += length;
    return { child, at, start: start - length, length };
  });
}

/** Index of the child that begins at `place`, or after the last one. */
const indexAt = (children: readonly Placed[], place: number): number =>
  children.findIndex(({ start }) => start >= place) < 0
    ? children.length
    : children.findIndex(({ start }) => start >= place);
