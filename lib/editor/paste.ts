/**
 * Puts pasted plain text into the script as one undo step. Its first line continues at the caret. A first line that
 * names its kind stays a line of its own before or after existing words, and splits them only when pasted into their
 * middle.
 */
import { Fragment, type Node, type Schema, Slice } from "@tiptap/pm/model";
import { type EditorState, TextSelection, type Transaction } from "@tiptap/pm/state";
import { CUE_LINE, LIVE_FIELD } from "#lib/doc/layout.ts";
import { editorLineAt, type LineAt } from "./lines.ts";
import type { PastedLine } from "./pasted.ts";

/** Null when there is nothing to paste. */
export function withPasted(state: EditorState, lines: readonly PastedLine[]): Transaction | null {
  const first = lines[0];
  const here = editorLineAt(state.doc, state.selection.from);
  if (first === undefined || here === null) return null;
  const tr = state.tr;
  const nodes = lines.map((line) => node(state.schema, line));
  const edge = first.kind === null ? null : edgeOf(state, here);
  if (edge !== null) {
    tr.insert(edge, nodes);
    const end = edge + Fragment.fromArray(nodes).size - 1;
    return tr.setSelection(TextSelection.create(tr.doc, end)).scrollIntoView();
  }
  if (here.node.content.size === 0 && first.kind !== null) tr.setNodeAttribute(here.pos, "kind", first.kind);
  tr.replaceSelection(new Slice(Fragment.fromArray(nodes), 1, 1));
  return tr.scrollIntoView();
}

/**
 * The position before or after the caret's line when the caret is at its start or end; null inside or in an empty line.
 */
function edgeOf({ selection }: EditorState, { node, pos }: LineAt): number | null {
  const { size } = node.content;
  if (!selection.empty || size === 0) return null;
  const { parentOffset } = selection.$from;
  if (parentOffset === 0) return pos;
  return parentOffset === size ? pos + node.nodeSize : null;
}

function node(schema: Schema, { kind, pieces }: PastedLine): Node {
  const content = pieces.map((p) => ("text" in p ? schema.text(p.text) : schema.node(LIVE_FIELD, { name: p.field })));
  return schema.node(CUE_LINE, { kind: kind ?? "form" }, content);
}
