/**
 * Binds an editor to an item's shared script: the text itself, the carets of others, and the page's one undo.
 *
 * The stock undo plugin is not used: it destroys the undo manager together with its editor, and here one manager serves
 * the rail and every script. All plugins are passed at creation; one registered later would cut undo off.
 */
import { Extension } from "@tiptap/core";
import { Plugin, type Transaction } from "@tiptap/pm/state";
import type { EditorView } from "@tiptap/pm/view";
import {
  getRelativeSelection,
  type ProsemirrorBinding,
  yCursorPlugin,
  ySyncPlugin,
  ySyncPluginKey,
} from "@tiptap/y-tiptap";
import type { Awareness } from "y-protocols/awareness";
import type * as Y from "yjs";
import { caretByLetter } from "./caret-by-letter.ts";
import { exactEdits } from "./exact-edit.ts";
import { touches, unsupportedContent } from "./fits.ts";
import { restoreSelection } from "./selection.ts";

export interface SharedOptions {
  readonly fragment: Y.XmlFragment;
  readonly awareness: Awareness;
  /** The page's undo manager, which outlives the editor. */
  readonly manager: Y.UndoManager;
  readonly undo: () => void;
  readonly redo: () => void;
  readonly caret: (user: unknown) => HTMLElement;
  /** Called when others wrote something that cannot be shown. The editor must be gone when this returns. */
  readonly onMisfit: (what: string) => void;
}

/** The state that the sync plugin keeps in the editor. */
function bindingOf(view: EditorView): ProsemirrorBinding | null {
  const state: { binding?: ProsemirrorBinding } | undefined = ySyncPluginKey.getState(view.state);
  return state?.binding ?? null;
}

/** True for changes that came from the shared text: other people's, or an undo. */
export function isFromShared(transaction: Transaction): boolean {
  const meta: { isChangeOrigin?: boolean } | undefined = transaction.getMeta(ySyncPluginKey);
  return meta?.isChangeOrigin === true;
}

export const SharedScript = Extension.create<{ shared: SharedOptions | null }>({
  name: "sharedScript",
  priority: 1000,
  addOptions: () => ({ shared: null }),
  addProseMirrorPlugins() {
    const { shared } = this.options;
    if (shared === null) return [];
    // What the editor writes is also this page's own.
    shared.manager.addTrackedOrigin(ySyncPluginKey);
    return [
      guardPlugin(shared),
      ySyncPlugin(shared.fragment),
      caretByLetter(),
      exactEdits(),
      yCursorPlugin(shared.awareness, {
        cursorBuilder: shared.caret,
        selectionBuilder: () => ({ class: "script-others-selection" }),
      }),
      selectionPlugin(shared.manager),
    ];
  },
  addKeyboardShortcuts() {
    const run = (act: "undo" | "redo") => () => {
      this.options.shared?.[act]();
      return true;
    };
    return { "Mod-z": run("undo"), "Mod-y": run("redo"), "Shift-Mod-z": run("redo") };
  },
});

/** Looks at every change before the binding's own observer does, and removes the editor in time. */
function guardPlugin({ fragment, onMisfit }: SharedOptions): Plugin {
  return new Plugin({
    view: (view) => {
      const { doc } = fragment;
      const look = (transaction: Y.Transaction) => {
        if (transaction.origin === ySyncPluginKey || !touches(transaction, fragment)) return;
        const what = unsupportedContent(fragment);
        if (what === null) return;
        bindingOf(view)?.destroy();
        onMisfit(what);
      };
      doc?.on("beforeObserverCalls", look);
      return { destroy: () => doc?.off("beforeObserverCalls", look) };
    },
  });
}

type StackEvent = { stackItem: { meta: Map<unknown, unknown> } };

/** Puts the caret back where it was when one's own change is undone. */
function selectionPlugin(manager: Y.UndoManager): Plugin {
  let before: ReturnType<typeof getRelativeSelection> | null = null;
  return new Plugin({
    state: {
      init: () => null,
      apply: (_tr, value, oldState) => {
        const state: { binding?: ProsemirrorBinding } | undefined = ySyncPluginKey.getState(oldState);
        before = state?.binding ? getRelativeSelection(state.binding, oldState) : null;
        return value;
      },
    },
    view: (view) => {
      const added = ({ stackItem }: StackEvent) => {
        const binding = bindingOf(view);
        if (binding && before && view.hasFocus() && !stackItem.meta.has(binding.type))
          stackItem.meta.set(binding.type, before);
      };
      const popped = ({ stackItem }: StackEvent) => {
        const binding = bindingOf(view);
        if (binding && view.hasFocus()) restoreSelection(view, binding, stackItem.meta.get(binding.type));
      };
      manager.on("stack-item-added", added);
      manager.on("stack-item-popped", popped);
      return {
        destroy: () => {
          manager.off("stack-item-added", added);
          manager.off("stack-item-popped", popped);
        },
      };
    },
  });
}
