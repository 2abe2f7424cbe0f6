/** What of a month's document only ever grows: its slots and their texts. */
import type * as Y from "yjs";
import { entriesHeld, type HoldOf } from "#lib/doc/held.ts";
import { monthParts } from "./layout.ts";

export function monthHolds(doc: Y.Doc): HoldOf {
  const { meta, slots } = monthParts(doc);
  return entriesHeld(slots, ["theme", "note"], [meta]);
}
