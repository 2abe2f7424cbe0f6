/**
 * Writes what was typed where it was typed.
 *
 * y-tiptap 3.0.9 finds an edit by comparing texts: a "b" typed before "bars" looks like one typed after its first
 * letter, and words that somebody else types there at the same moment end up in the middle of one's own. It also takes
 * two adjacent texts, created when two people began one empty line, for one and rewrites both. Here an edit within one
 * line is found from the caret after it. Everything else is left to the binding, and a line that it creates gets its
 * text at once, because the binding moves one of two adjacent texts into the other merely by showing them.
 */
import type { Node } from "@tiptap/pm/model";
import { Plugin } from "@tiptap/pm/state";
import type { EditorView } from "@tiptap/pm/view";
import { type ProsemirrorBinding, ySyncPluginKey } from "@tiptap/y-tiptap";
import * as Y from "yjs";
import { LINE_AT } from "#lib/doc/layout.ts";

/** The shared texts between two live fields of a line, or at its ends: none, one or several. */
interface Run {
  readonly texts: readonly Y.XmlText[];
  /** Index among the line's children where a text of this run would go. */
  readonly at: number;
}
interface Edit {
  readonly at: number;
  readonly removed: number;
  readonly inserted: string;
}

/** Add it after the plugin that binds the editor to the shared text. */
export function exactEdits(): Plugin {
  return new Plugin({
    view: (view) => {
      const state: { binding?: ProsemirrorBinding } | undefined = ySyncPluginKey.getState(view.state);
      const { binding } = state ?? {};
      if (binding) {
        const compare = binding._prosemirrorChanged.bind(binding);
        binding._prosemirrorChanged = (doc: Node) => {
          if (writeTyped(binding, view)) return;
          binding.doc.transact(() => {
            compare(doc);
            giveTexts(binding);
          }, ySyncPluginKey);
        };
      }
      return {};
    },
  });
}

/** True where the edit was within one line and has been written; the shared text then matches the editor. */
function writeTyped(binding: ProsemirrorBinding, view: EditorView): boolean {
  const { doc, selection } = view.state;
  const lines = binding.type.toArray();
  const index = selection.$head.index(0);
  const [line, shown] = [lines[index], doc.maybeChild(index)];
  if (!(line instanceof Y.XmlElement) || !shown || lines.length !== doc.childCount) return false;
  if (!lines.every((other, i) => i === index || binding.mapping.get(other as Y.XmlElement) === doc.child(i)))
    return false;
  const sameOf = (key: string) => (line.getAttribute(key) ?? null) === shown.attrs[key];
  if (!sameOf("kind") || !sameOf(LINE_AT)) return false;
  const parts = { shared: sharedParts(line), shown: shownParts(shown) };
  if (!parts.shared || parts.shared.fields.join() !== parts.shown.fields.join()) return false;
  const { runs } = parts.shared;
  const changed = runs.flatMap((run, i) => (wordsOf(run) === parts.shown.texts[i] ? [] : [i]));
  const [at] = changed;
  if (at === undefined) {
    // Only the selection moved, but the binding would still merge two adjacent texts.
    binding.mapping.set(line, shown);
    return true;
  }
  const run = runs[at];
  if (changed.length !== 1 || !run) return false;
  const caret = selection.$head.parentOffset - startOf(parts.shown.texts, at);
  const edit = editBefore(wordsOf(run), parts.shown.texts[at] ?? "", caret);
  if (!edit) return false;
  binding.doc.transact(() => writeInto(line, run, edit), ySyncPluginKey);
  binding.mapping.set(line, shown);
  return true;
}

/** Only in lines this page made: if two pages did it, a line would get two texts. */
function giveTexts({ type, doc }: ProsemirrorBinding): void {
  for (const line of type.toArray())
    if (line instanceof Y.XmlElement && line.length === 0 && line._item?.id.client === doc.clientID)
      line.insert(0, [new Y.XmlText()]);
}

/** The edit that turned `before` into `after` and left the caret at `caret`; null where none could. */
function editBefore(before: string, after: string, caret: number): Edit | null {
  const tail = after.length - caret;
  if (caret < 0 || tail < 0 || tail > before.length || !before.endsWith(after.slice(caret))) return null;
  const end = before.length - tail;
  let at = 0;
  while (at < end && at < caret && before[at] === after[at]) at++;
  return { at, removed: end - at, inserted: after.slice(at, caret) };
}

function writeInto(line: Y.XmlElement, run: Run, { at, removed, inserted }: Edit): void {
  let start = 0;
  let written = inserted === "";
  for (const text of run.texts) {
    const { length } = text;
    const from = Math.max(0, at - start);
    const count = Math.min(length, at + removed - start) - from;
    if (count > 0) text.delete(from, count);
    // Placed with the letter before it, so that what one person types stays together.
    if (!written && at <= start + length) {
      text.insert(at - start, inserted);
      written = true;
    }
    start += length;
  }
  if (!written) line.insert(run.at, [new Y.XmlText(inserted)]);
}

/** Null where a line holds something this editor does not write. */
function sharedParts(line: Y.XmlElement): { runs: Run[]; fields: string[] } | null {
  const fields: string[] = [];
  let texts: Y.XmlText[] = [];
  const runs: Run[] = [{ texts, at: 0 }];
  for (const [i, child] of line.toArray().entries()) {
    if (child instanceof Y.XmlText) texts.push(child);
    else if (child instanceof Y.XmlElement) {
      texts = [];
      fields.push(String(child.getAttribute("name")));
      runs.push({ texts, at: i + 1 });
    } else return null;
  }
  return { runs, fields };
}

function shownParts(line: Node): { texts: string[]; fields: string[] } {
  const texts = [""];
  const fields: string[] = [];
  line.forEach((child) => {
    if (child.isText) texts.push(`${texts.pop() ?? ""}${child.text ?? ""}`);
    else {
      fields.push(String(child.attrs.name));
      texts.push("");
    }
  });
  return { texts, fields };
}

/** Where a text begins in its line; each live field before it counts as one place. */
const startOf = (texts: readonly string[], at: number): number =>
  texts.slice(0, at).reduce((sum, text) => sum + text.length + 1, 0);

const wordsOf = ({ texts }: Run): string =>
  texts
    .flatMap((text) =>
      (text.toDelta() as { insert: unknown }[]).map(({ insert }) => (typeof insert === "string" ? insert : "")),
    )
    .join("");
