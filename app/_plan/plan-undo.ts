/** What of a plan one's undo takes back: everything a person writes in it, the script included. */
import { ySyncPluginKey } from "@tiptap/y-tiptap";
import { parts } from "#lib/doc/layout.ts";
import { takeBackItem, type Writer } from "#lib/doc/write.ts";
import { PageUndo } from "./undo.ts";

export function planUndo(writer: Writer, onChange: () => void): PageUndo {
  const { items, head, title, notes } = parts(writer.doc);
  return new PageUndo(writer, onChange, {
    types: [items, head, title, notes],
    entries: items,
    // What the script's editor writes is this page's own as well.
    origins: [ySyncPluginKey],
    takeBack: takeBackItem,
  });
}
