/** Converts between a place in an editor and a place in the shared text that stays put while others write. */
import { TextSelection } from "@tiptap/pm/state";
import type { EditorView } from "@tiptap/pm/view";
import { type ProsemirrorBinding, relativePositionToAbsolutePosition } from "@tiptap/y-tiptap";
import * as Y from "yjs";

const isRelative = (value: unknown): value is Y.RelativePosition => value instanceof Y.RelativePosition;

/** Restores the selection `remembered` (from `getRelativeSelection`); does nothing when its words are gone. */
export function restoreSelection(view: EditorView, binding: ProsemirrorBinding, remembered: unknown): void {
  if (typeof remembered !== "object" || remembered === null) return;
  if (!("anchor" in remembered) || !("head" in remembered)) return;
  const anchor = positionOf(binding, remembered.anchor);
  const head = positionOf(binding, remembered.head);
  if (anchor === null || head === null) return;
  const { doc } = view.state;
  const within = (pos: number) => doc.resolve(Math.min(pos, doc.content.size));
  view.dispatch(view.state.tr.setSelection(TextSelection.between(within(anchor), within(head))).scrollIntoView());
}

/** A shared place as an editor position; null when what it was in is gone. */
function positionOf(binding: ProsemirrorBinding, place: unknown): number | null {
  if (!isRelative(place)) return null;
  return relativePositionToAbsolutePosition(binding.doc, binding.type, place, binding.mapping);
}
