/** Whose page last set each value that people plan a class by. */
import * as Y from "yjs";
import { DOT, type EntryMap, monthParts, occurrenceOf, SLOT_KEYS } from "./layout.ts";

const PARTS = ["date", "start", "minutes", "room", "coach", "out"] as const;

/** Client ids by part. One is missing where nobody can tell, as with a value that was removed. */
export type ClassWriters = Readonly<Partial<Record<(typeof PARTS)[number], number>>>;

/** Of a class of the pattern what differs in it is asked first, then its line. */
export function classWriters(doc: Y.Doc, id: string): ClassWriters {
  const { slots, lines, changed } = monthParts(doc);
  const line = lines.get(occurrenceOf(id)?.line ?? "");
  const single = slots.get(id);
  const of = (key: string): number | undefined => {
    if (single) return writerOfKey(single, key);
    return changed.has(id + DOT + key) ? writerOfKey(changed, id + DOT + key) : writerOfKey(line, key);
  };
  const found = PARTS.flatMap((part) => {
    // A class that vanished has no key that calls it off.
    const writer = of(SLOT_KEYS[part]) ?? (part === "out" ? of("deleted") : undefined);
    return writer === undefined ? [] : [[part, writer] as const];
  });
  return Object.fromEntries(found);
}

/** yjs holds the newest item of each key in `_map`; its id says under which client it was written. */
function writerOfKey(map: EntryMap | undefined, key: string): number | undefined {
  const last = map instanceof Y.Map ? map._map.get(key) : undefined;
  return last && !last.deleted ? last.id.client : undefined;
}
