/** What of a plan one's undo takes back: everything a person writes in it. What an editor writes, it adds itself. */
import { ActUndo } from "#lib/client/act-undo.ts";
import { planParts, UNDONE_CREATION } from "#lib/doc/layout.ts";
import type { Writer } from "#lib/doc/write.ts";

export function planUndo({ doc, origin }: Writer, onChange: () => void): ActUndo {
  const { items, head, title, theme, notes } = planParts(doc);
  return new ActUndo({
    ...{ doc, origin, onChange },
    scopes: [items, head, title, theme, notes],
    takenOut: { key: "deleted", value: UNDONE_CREATION },
  });
}
