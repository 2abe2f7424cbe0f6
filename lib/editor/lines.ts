/**
 * An editor's lines: which one the caret is in, what it says as a plan file writes it, and the changes that can be made
 * to it.
 */
import type { Node } from "@tiptap/pm/model";
import { type EditorState, TextSelection, type Transaction } from "@tiptap/pm/state";
import { CUE_LINE } from "#lib/doc/layout.ts";
import { kindOf } from "#lib/plan/cue-words.ts";
import type { CueKind } from "#lib/plan/schema.ts";
import { escapeScriptText } from "#lib/plan/script-text.ts";
import { nextKind } from "./next-kind.ts";

export interface LineAt {
  readonly node: Node;
  /** Position before the line. */
  readonly pos: number;
  readonly index: number;
  readonly kind: CueKind;
}

/** The line a position is in; null only where there is none. */
export function editorLineAt(doc: Node, pos: number): LineAt | null {
  const $pos = doc.resolve(Math.max(0, Math.min(pos, doc.content.size)));
  const index = Math.min($pos.index(0), doc.childCount - 1);
  const node = index < 0 ? null : doc.child(index);
  if (node === null || node.type.name !== CUE_LINE) return null;
  let before = 0;
  for (let i = 0; i < index; i++) before += doc.child(i).nodeSize;
  return { node, pos: before, index, kind: kindOf(node.attrs.kind) };
}

/** The line of that index among those with words, as the plan counts them. */
export function wordedLine(doc: Node, wanted: number): { readonly node: Node; readonly pos: number } | null {
  let index = -1;
  let found: { node: Node; pos: number } | null = null;
  doc.forEach((node, pos) => {
    if (node.content.size > 0) index++;
    if (index === wanted) found ??= { node, pos };
  });
  return found;
}

interface Place {
  readonly from: number;
  readonly to: number;
}

/** Where characters of a line's text, as a plan file writes it, stand in the editor; of a live field the whole. */
export function placeOfWords({ node, pos }: { node: Node; pos: number }, words: Place): Place {
  let [written, shown] = [0, pos + 1];
  let place: Place | null = null;
  const pass = (length: number, size: number) => {
    const isIn = written + length > words.from && written < words.to;
    if (isIn) place = { from: place?.from ?? shown, to: shown + size };
    written += length;
    shown += size;
  };
  node.forEach((child) => {
    if (child.isText) for (const letter of child.text ?? "") pass(escapeScriptText(letter).length, letter.length);
    else pass(`{${String(child.attrs.name)}}`.length, child.nodeSize);
  });
  return place ?? { from: shown, to: shown };
}

/** The words of a line as a plan file writes them. */
export function lineText(line: Node): string {
  let text = "";
  line.forEach((child) => {
    text += child.isText ? escapeScriptText(child.text ?? "") : `{${String(child.attrs.name)}}`;
  });
  return text;
}

export function kindsOf(doc: Node): CueKind[] {
  const kinds: CueKind[] = [];
  doc.forEach((line) => {
    kinds.push(kindOf(line.attrs.kind));
  });
  return kinds;
}

/** Gives every line that the selection touches a kind. Null when all of them already have it. */
export function withKind(state: EditorState, kind: CueKind): Transaction | null {
  const tr = state.tr;
  const { from, to } = state.selection;
  state.doc.forEach((line, pos) => {
    const touched = pos < to && pos + line.nodeSize > from;
    if (touched && line.attrs.kind !== kind) tr.setNodeAttribute(pos, "kind", kind);
  });
  return tr.docChanged ? tr : null;
}

/**
 * A new line at the caret. After the whole line: the next kind the script lacks. Before it: an empty line of the same
 * kind. In the middle: the second half keeps its kind.
 */
export function withNewLine(state: EditorState): Transaction | null {
  const tr = state.selection.empty ? state.tr : state.tr.deleteSelection();
  const { $from } = tr.selection;
  const line = editorLineAt(tr.doc, $from.pos);
  if (line === null || $from.depth !== 1) return null;
  const { type } = line.node;
  if ($from.parentOffset === 0 && line.node.content.size > 0) {
    return tr.insert(line.pos, type.create({ kind: line.node.attrs.kind })).scrollIntoView();
  }
  const atEnd = $from.parentOffset === line.node.content.size;
  const kind = atEnd ? nextKind({ kind: line.kind, present: kindsOf(tr.doc) }) : line.node.attrs.kind;
  return tr.split($from.pos, 1, [{ type, attrs: { kind } }]).scrollIntoView();
}

/** Removes the caret's line when it is empty and not the only one; the caret goes to the end of the line before. */
export function withoutEmptyLine(state: EditorState): Transaction | null {
  const { $from, empty } = state.selection;
  const line = editorLineAt(state.doc, $from.pos);
  if (!empty || line === null || line.node.content.size > 0 || state.doc.childCount < 2) return null;
  const tr = state.tr.delete(line.pos, line.pos + line.node.nodeSize);
  const near = line.index === 0 ? 1 : line.pos - 1;
  return tr.setSelection(TextSelection.create(tr.doc, near)).scrollIntoView();
}

/** Selects all words. Not the lines around them: what replaced those would be a new line without a kind. */
export function withAllWords(state: EditorState): Transaction {
  const { doc } = state;
  return state.tr.setSelection(TextSelection.create(doc, 1, doc.content.size - 1));
}

/** Deletes all words where all are selected; the first line stays, empty, with its kind. Null where some are not. */
export function withoutAllWords(state: EditorState): Transaction | null {
  const { doc, selection } = state;
  const end = doc.content.size - 1;
  if (selection.empty || selection.from > 1 || selection.to < end) return null;
  const tr = end > 1 ? state.tr.delete(1, end) : state.tr;
  return tr.setSelection(TextSelection.create(tr.doc, 1)).scrollIntoView();
}
