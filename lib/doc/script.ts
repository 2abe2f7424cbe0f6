/**
 * An item's script: a fragment of cue lines, each with its kind, holding text and live fields.
 * In a plan file a live field is written `{name}` and a brace `{{`.
 */
import * as Y from "yjs";
import { isCueKind } from "#lib/plan/cue-words.ts";
import { type CueKind, type LineBegin, lineAtSchema, type ScriptLine } from "#lib/plan/schema.ts";
import { escapeScriptText, parseScriptText, type ScriptPiece } from "#lib/plan/script-text.ts";
import { CUE_LINE, LINE_AT, LIVE_FIELD } from "./layout.ts";
import { stored } from "./stored.ts";

/** Reads a script without changing it. Lines without words are left out. */
export function readScript(fragment: Y.XmlFragment): ScriptLine[] {
  return fragment.toArray().flatMap((node) => {
    const line = node instanceof Y.XmlElement ? readLine(node) : undefined;
    return line ? [line] : [];
  });
}

/** One line of a script; undefined where it has no words. */
export function readLine(node: Y.XmlElement): ScriptLine | undefined {
  const kind: unknown = node.getAttribute("kind");
  const text = textOf(node);
  if (!text) return undefined;
  const at = readAt(node.getAttribute(LINE_AT));
  return { kind: isCueKind(kind) ? kind : "form", text, ...(at ? { at } : {}) };
}

/** When a line begins, from its attribute; undefined for none, and for what is no time. */
export function readAt(value: unknown): LineBegin | undefined {
  const [, word, seconds] = (typeof value === "string" && /^(after|left) (\S+)$/.exec(value)) || [];
  return stored(lineAtSchema, word === undefined ? undefined : { [`${word}Seconds`]: Number(seconds) });
}

const writtenAt = (at: LineBegin): string =>
  "afterSeconds" in at ? `after ${at.afterSeconds}` : `left ${at.leftSeconds}`;

/** Our editors never nest lines; a document that nests them deeply must not crash the server. */
const MAX_DEPTH = 16;

function textOf(node: Y.XmlElement, depth = 0): string {
  if (depth > MAX_DEPTH) return "";
  return node
    .toArray()
    .map((child) => {
      if (child instanceof Y.XmlText) return escapeScriptText(plainText(child));
      if (!(child instanceof Y.XmlElement)) return "";
      if (child.nodeName === LIVE_FIELD) return `{${String(child.getAttribute("name"))}}`;
      return textOf(child, depth + 1);
    })
    .join("");
}

function plainText(text: Y.XmlText): string {
  return (text.toDelta() as { insert: unknown }[]).map((d) => (typeof d.insert === "string" ? d.insert : "")).join("");
}

/**
 * A new fragment from lines. With no lines it holds one empty line with an empty text in it: without that text, two
 * people who start typing at once would each create one.
 */
export function scriptFragment(lines: readonly ScriptLine[], emptyKind: CueKind = "setup"): Y.XmlFragment {
  const fragment = new Y.XmlFragment();
  const nodes = lines.length > 0 ? lines.map(lineElement) : [cueElement(emptyKind, [])];
  fragment.insert(0, nodes);
  return fragment;
}

export function lineElement(line: ScriptLine): Y.XmlElement {
  const element = cueElement(line.kind, piecesOf(line));
  if (line.at) element.setAttribute(LINE_AT, writtenAt(line.at));
  return element;
}

/** Undefined removes it: the line is then said when it comes. */
export function setLineAt(line: Y.XmlElement, at: LineBegin | undefined): void {
  if (at) line.setAttribute(LINE_AT, writtenAt(at));
  else line.removeAttribute(LINE_AT);
}

/** A text with an unknown field in it is kept as it is. */
function piecesOf(line: ScriptLine): readonly ScriptPiece[] {
  const parsed = parseScriptText(line.text);
  return parsed.ok ? parsed.pieces : [{ text: line.text }];
}

function cueElement(kind: CueKind, pieces: readonly ScriptPiece[]): Y.XmlElement {
  const element = new Y.XmlElement(CUE_LINE);
  element.setAttribute("kind", kind);
  element.insert(0, pieces.length > 0 ? pieces.map(pieceNode) : [new Y.XmlText()]);
  return element;
}

function pieceNode(piece: ScriptPiece): Y.XmlText | Y.XmlElement {
  if ("text" in piece) return new Y.XmlText(piece.text);
  const field = new Y.XmlElement(LIVE_FIELD);
  field.setAttribute("name", piece.field);
  return field;
}
