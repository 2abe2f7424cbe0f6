/** Puts pasted plain text into the script as one undo step: the first line goes on where the caret is. */
import { Fragment, type Node, type Schema, Slice } from "@tiptap/pm/model";
import type { EditorState, Transaction } from "@tiptap/pm/state";
import { CUE_LINE, LIVE_FIELD } from "#lib/doc/layout.ts";
import { lineAt } from "./lines.ts";
import type { PastedLine } from "./pasted.ts";

/** Null when there is nothing to paste. */
export function withPasted(state: EditorState, lines: readonly PastedLine[]): Transaction | null {
  const first = lines[0];
  const here = lineAt(state.doc, state.selection.from);
  if (first === undefined || here === null) return null;
  const tr = state.tr;
  const nodes = lines.map((line) => node(state.schema, line));
  if (here.node.content.size === 0 && first.kind !== null) tr.setNodeAttribute(here.pos, "kind", first.kind);
  tr.replaceSelection(new Slice(Fragment.fromArray(nodes), 1, 1));
  return tr.scrollIntoView();
}

function node(schema: Schema, { kind, pieces }: PastedLine): Node {
  const content = pieces.map((p) => ("text" in p ? schema.text(p.text) : schema.node(LIVE_FIELD, { name: p.field })));
  return schema.node(CUE_LINE, { kind: kind ?? "form" }, content);
}
