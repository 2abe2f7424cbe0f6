/**
 * What is copied from a script, as plain text: `form: Long neck.` for a whole line, so that it keeps its kind and its
 * live fields when pasted back and reads well anywhere else. Part of a line is copied as just its words.
 */
import type { Node } from "@tiptap/pm/model";
import { type EditorState, TextSelection, type Transaction } from "@tiptap/pm/state";
import { KIND_WORDS, kindOf } from "#lib/plan/cue-words.ts";
import { lineText, withoutAllWords } from "./lines.ts";

interface Taken {
  /** The part that is selected, as a line of its own. */
  readonly part: Node;
  /** Positions before and after the line in the script. */
  readonly from: number;
  readonly to: number;
  readonly whole: boolean;
}

/** The selected words as plain text; "" when no words are selected. */
export function copiedText(state: EditorState): string {
  const taken = takenLines(state);
  const withKinds = taken.length > 1 || taken[0]?.whole === true;
  return taken
    .map(({ part }) => (withKinds ? `${KIND_WORDS[kindOf(part.attrs.kind)]}: ${lineText(part)}` : lineText(part)))
    .join("\n");
}

/** Deletes the selection. Lines that were selected whole leave no empty line, unless none would be left. */
export function withoutCopied(state: EditorState): Transaction {
  const taken = takenLines(state);
  const [first, last] = [taken[0], taken.at(-1)];
  const cleared = withoutAllWords(state);
  if (cleared) return cleared;
  if (!first || !last || !taken.every(({ whole }) => whole)) return state.tr.deleteSelection().scrollIntoView();
  const tr = state.tr.delete(first.from, last.to);
  const near = tr.doc.resolve(Math.min(first.from, tr.doc.content.size));
  return tr.setSelection(TextSelection.near(near, first.from === 0 ? 1 : -1)).scrollIntoView();
}

/** The lines in which something is selected. */
function takenLines({ doc, selection }: EditorState): Taken[] {
  const taken: Taken[] = [];
  doc.forEach((line, pos) => {
    const begin = pos + 1;
    const from = Math.max(0, selection.from - begin);
    const to = Math.min(line.content.size, selection.to - begin);
    if (to <= from) return;
    const whole = from === 0 && to === line.content.size;
    taken.push({ part: line.cut(from, to), from: pos, to: pos + line.nodeSize, whole });
  });
  return taken;
}
