/**
 * The parts of a month document that no update may erase: its classes, lines, themes and groups of regulars, and their texts. Pages
 * write neither `meta` nor what the server notes.
 */
import type * as Y from "yjs";
import type { ProtectionOf } from "#lib/doc/protected-parts.ts";
import { monthParts } from "./layout.ts";

const NOTE_OF_OCCURRENCE = /\.note\./;

export function monthProtection(doc: Y.Doc): ProtectionOf {
  const { meta, slots, lines, themes, regulars, revisions, carried, changed } = monthParts(doc);
  const sealed = new Set<unknown>([meta, revisions, carried]);
  const entries = new Set<unknown>([slots, lines, themes, regulars]);
  const texts = new Set(["theme", "note", "name"]);
  return (parent, key) => {
    if (entries.has(parent)) return "made-once";
    if (sealed.has(parent)) return "sealed";
    if (parent === changed) return NOTE_OF_OCCURRENCE.test(key) ? "made-once" : undefined;
    return entries.has(parent._item?.parent) && texts.has(key) ? "made-once" : undefined;
  };
}
