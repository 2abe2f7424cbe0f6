/** Selects words of a script, to show what a step of the change was read from. */
import type { Editor } from "@tiptap/core";
import { TextSelection } from "@tiptap/pm/state";
import type { HeardAct } from "#lib/acts/plan-acts.ts";
import { placeOfWords, wordedLine } from "#lib/editor/lines.ts";

export function showWords({ view }: Editor, { line, from, to }: Pick<HeardAct, "line" | "from" | "to">): void {
  const found = wordedLine(view.state.doc, line);
  if (!found) return;
  const place = placeOfWords(found, { from, to });
  view.dispatch(view.state.tr.setSelection(TextSelection.create(view.state.doc, place.from, place.to)));
  const element = view.nodeDOM(found.pos);
  if (element instanceof HTMLElement) element.scrollIntoView({ block: "nearest" });
  if (view.editable) {
    view.focus();
    return;
  }
  // An editor for reading only leaves the selection to the browser.
  const [start, end] = [view.domAtPos(place.from), view.domAtPos(place.to)];
  getSelection()?.setBaseAndExtent(start.node, start.offset, end.node, end.offset);
}
