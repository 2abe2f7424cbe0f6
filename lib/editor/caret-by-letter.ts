/**
 * Keeps the caret behind the letter before it while others write in the same line.
 *
 * y-tiptap 3.0.9 remembers a caret both as a place in the shared text and as a plain offset. After somebody else's
 * change it restores the offset whenever the line no longer reads as before, so each of their letters moves the caret
 * through one's own words. Its place in the shared text also holds on to the letter after the caret, so that two people
 * at the end of one line push each other along. Here the offset is dropped and the place holds on to the letter before,
 * since yjs keeps what is typed after one's own last letter together.
 */
import { Plugin } from "@tiptap/pm/state";
import { type ProsemirrorBinding, ySyncPluginKey } from "@tiptap/y-tiptap";
import * as Y from "yjs";

interface Remembered {
  readonly type: string;
  readonly anchor: unknown;
  readonly head: unknown;
}

/** Add it after the plugin that binds the editor to the shared text. */
export function caretByLetter(): Plugin {
  return new Plugin({
    view: (view) => {
      const state: { binding?: ProsemirrorBinding } | undefined = ySyncPluginKey.getState(view.state);
      if (state?.binding) holdByLetter(state.binding);
      return {};
    },
  });
}

function holdByLetter(binding: ProsemirrorBinding): void {
  let remembered: Remembered | null = null;
  Object.defineProperty(binding, "beforeTransactionSelection", {
    configurable: true,
    get: () => remembered,
    set: (value: Remembered | null) => {
      remembered = value?.type === "text" ? byLetter(value, binding.doc) : value;
    },
  });
}

/** Drops the plain offsets, which would win over the places. */
const byLetter = ({ type, anchor, head }: Remembered, doc: Y.Doc): Remembered => ({
  type,
  anchor: placeByLetter(anchor, doc),
  head: placeByLetter(head, doc),
});

function placeByLetter(place: unknown, doc: Y.Doc): unknown {
  if (!(place instanceof Y.RelativePosition)) return place;
  const at = Y.createAbsolutePositionFromRelativePosition(place, doc);
  if (at === null || !(at.type instanceof Y.XmlText || (at.type instanceof Y.XmlElement && at.index === 0)))
    return place;
  return Y.createRelativePositionFromTypeIndex(at.type, at.index, -1);
}
