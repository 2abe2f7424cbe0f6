/** The parts of a month document that no update may erase: its slots and their texts. */
import type * as Y from "yjs";
import { entryProtection, type ProtectionOf } from "#lib/doc/protected-parts.ts";
import { monthParts } from "./layout.ts";

export function monthProtection(doc: Y.Doc): ProtectionOf {
  const { meta, slots } = monthParts(doc);
  return entryProtection(slots, ["theme", "note"], [meta]);
}
