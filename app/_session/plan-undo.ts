/** What a person's undo covers: everything they write in the plan. A script's editor adds its own text to it. */
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
