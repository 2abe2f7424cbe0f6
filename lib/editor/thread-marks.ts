/**
 * Underlines the words that open threads are about. One's own typing moves the underlines with the words; after others'
 * changes they are looked up again in the shared text. A thread whose words are gone has no underline; its slip says
 * so.
 */
import { Extension } from "@tiptap/core";
import type { Node } from "@tiptap/pm/model";
import { Plugin, PluginKey } from "@tiptap/pm/state";
import { Decoration, DecorationSet, type EditorView } from "@tiptap/pm/view";
import type * as Y from "yjs";
import { flatLineAt, flatScript } from "#lib/margin/flat-script.ts";
import { pinIn, type WordsAnchor } from "#lib/margin/pin.ts";
import { isFromShared } from "./shared.ts";

export interface WordsThread {
  readonly id: string;
  readonly anchor: WordsAnchor;
}
interface Marks {
  readonly threads: readonly WordsThread[];
  readonly set: DecorationSet;
}
const key = new PluginKey<Marks>("threadMarks");

/**
 * An editor position for an offset of the flat script: each earlier line has one more border than it has line feeds.
 */
const editorPositionAt = (offset: number, line: number): number => offset + 1 + line;
/** The offset of the flat script for an editor position inside a line. */
export const flatOffsetAt = (doc: Node, position: number): number => position - 1 - doc.resolve(position).index(0);

/** Tells an editor which threads to underline. */
export function showThreads(view: EditorView, threads: readonly WordsThread[]): void {
  view.dispatch(view.state.tr.setMeta(key, threads).setMeta("addToHistory", false));
}

/** The threads whose words are at a position. */
function threadsAt(view: EditorView, position: number): string[] {
  const found = key.getState(view.state)?.set.find(position, position) ?? [];
  return found.flatMap((mark) => (typeof mark.spec.thread === "string" ? [mark.spec.thread] : []));
}

export const ThreadMarks = Extension.create<{ fragment: Y.XmlFragment | null; onPick: (threadId: string) => void }>({
  name: "threadMarks",
  addOptions: () => ({ fragment: null, onPick: () => undefined }),
  addProseMirrorPlugins() {
    const { fragment, onPick } = this.options;
    if (fragment === null) return [];
    return [
      new Plugin<Marks>({
        key,
        state: {
          init: () => ({ threads: [], set: DecorationSet.empty }),
          apply: (tr, before) => {
            const given: readonly WordsThread[] | undefined = tr.getMeta(key);
            const threads = given ?? before.threads;
            if (given !== undefined || isFromShared(tr)) return { threads, set: marksOf(fragment, tr.doc, threads) };
            return tr.docChanged ? { threads, set: before.set.map(tr.mapping, tr.doc) } : before;
          },
        },
        props: {
          decorations: (state) => key.getState(state)?.set,
          handleClick: (view, position) => {
            const thread = view.state.selection.empty ? threadsAt(view, position)[0] : undefined;
            if (thread !== undefined) onPick(thread);
            return false;
          },
        },
      }),
    ];
  },
});

function marksOf(fragment: Y.XmlFragment, doc: Node, threads: readonly WordsThread[]): DecorationSet {
  const flat = flatScript(fragment);
  const marks = threads.flatMap(({ id, anchor }) => {
    const pin = pinIn(fragment, flat, anchor);
    if (pin.state === "gone") return [];
    const from = editorPositionAt(pin.from, flatLineAt(flat, pin.from));
    const to = editorPositionAt(pin.to, flatLineAt(flat, pin.to));
    if (to > doc.content.size) return [];
    return [Decoration.inline(from, to, { class: `script-thread script-thread-${pin.state}` }, { thread: id })];
  });
  return DecorationSet.create(doc, marks);
}
