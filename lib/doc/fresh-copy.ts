/** A plan's document without its history: what yjs keeps of every change adds up, and a copy needs none of it. */
import * as Y from "yjs";
import { planParts } from "./layout.ts";

/**
 * A new document with the content of `source`, including items taken out and keys this version does not know.
 * References into the source by its structs (undo, comments on words) do not point into the copy.
 */
export function freshCopy(source: Y.Doc): Y.Doc {
  const doc = new Y.Doc();
  const [from, to] = [planParts(source), planParts(doc)];
  doc.transact(() => {
    for (const name of ["title", "theme", "notes"] as const) to[name].applyDelta(from[name].toDelta());
    for (const name of ["meta", "head", "items", "carried"]) copyEntries(source.getMap(name), doc.getMap(name));
  });
  return doc;
}

/** In order of their keys, so that two copies of one plan are the same. */
function copyEntries(from: Y.Map<unknown>, to: Y.Map<unknown>): void {
  for (const key of [...from.keys()].sort()) {
    const value = from.get(key);
    to.set(key, value instanceof Y.AbstractType ? value.clone() : value);
  }
}
