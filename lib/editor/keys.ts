/** The script's keys. Tab is left alone, so that keyboard users can always leave the editor. */
import { Extension } from "@tiptap/core";
import { baseKeymap } from "@tiptap/pm/commands";
import { keydownHandler } from "@tiptap/pm/keymap";
import { type EditorState, Plugin, type Transaction } from "@tiptap/pm/state";
import { CUE_KINDS } from "#lib/plan/schema.ts";
import { withAllWords, withKind, withNewLine, withoutAllWords, withoutEmptyLine } from "./lines.ts";

export const ScriptKeys = Extension.create({
  name: "scriptKeys",
  priority: 900,
  addProseMirrorPlugins() {
    const newLine = run(withNewLine);
    const own = keydownHandler({
      Enter: newLine,
      "Shift-Enter": newLine,
      "Mod-Enter": newLine,
      Backspace: run((state) => withoutAllWords(state) ?? withoutEmptyLine(state)),
      Delete: run(withoutAllWords),
      "Mod-a": run(withAllWords),
    });
    const base = keydownHandler(baseKeymap);
    return [
      new Plugin({
        props: {
          handleKeyDown: (view, event) => {
            const kind = kindOfKey(event);
            if (kind !== undefined && view.editable) {
              const tr = withKind(view.state, kind);
              if (tr) view.dispatch(tr);
              return true;
            }
            return own(view, event) || base(view, event);
          },
        },
      }),
    ];
  },
});

/** Alt with 1 to 9, by the key's position: with Alt held some keyboards type other characters. */
function kindOfKey(event: KeyboardEvent): (typeof CUE_KINDS)[number] | undefined {
  if (!event.altKey || event.ctrlKey || event.metaKey || event.shiftKey) return undefined;
  const digit = /^Digit([1-9])$/.exec(event.code)?.[1];
  return digit === undefined ? undefined : CUE_KINDS[Number(digit) - 1];
}

const run =
  (change: (state: EditorState) => Transaction | null) =>
  (state: EditorState, dispatch?: (tr: Transaction) => void): boolean => {
    const tr = change(state);
    if (tr === null) return false;
    dispatch?.(tr);
    return true;
  };
