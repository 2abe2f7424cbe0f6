/** The plan page's undo: what of a plan's document it reaches. Its law stands in `lib/client/act-undo.ts`. */
import { ySyncPluginKey } from "@tiptap/y-tiptap";
import { ActUndo } from "#lib/client/act-undo.ts";
import { parts, TAKEN_BACK } from "#lib/doc/layout.ts";
import type { Writer } from "#lib/doc/write.ts";

export class PageUndo extends ActUndo {
  constructor({ doc, origin }: Writer, onChange: () => void, whoWrote?: (clientId: number) => string | undefined) {
    const { items, head, title, notes } = parts(doc);
    super({
      doc,
      origin,
      scopes: [items, head, title, notes],
      typingOrigins: [ySyncPluginKey],
      takenOut: { key: "deleted", value: TAKEN_BACK },
      onChange,
      ...(whoWrote ? { whoWrote } : {}),
    });
  }
}
