/** What of a plan one's undo takes back: everything a person writes in it, the script included. */
import { ySyncPluginKey } from "@tiptap/y-tiptap";
import { ActUndo } from "#lib/client/act-undo.ts";
import { parts, TAKEN_BACK } from "#lib/doc/layout.ts";
import type { Writer } from "#lib/doc/write.ts";

export function planUndo({ doc, origin }: Writer, onChange: () => void): ActUndo {
  const { items, head, title, theme, notes } = parts(doc);
  return new ActUndo({
    ...{ doc, origin, onChange },
    scopes: [items, head, title, theme, notes],
    // What the script's editor writes is this page's own as well.
    typingOrigins: [ySyncPluginKey],
    takenOut: { key: "deleted", value: TAKEN_BACK },
  });
}
