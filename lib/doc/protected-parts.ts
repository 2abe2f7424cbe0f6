/**
 * What of a shared document only ever grows (INV-07). A page may make an item; that its map, its kind and its texts are
 * there is then settled for good: taking out is a mark. The server holds every page to this, so that a page that was
 * tampered with cannot do what ours never do.
 */
import type * as Y from "yjs";
import { planParts } from "./layout.ts";

/** `made-once`: a page may put it there, nobody replaces or erases it. `sealed`: a page never writes it. */
type WriteProtection = "made-once" | "sealed";

/** What holds for one key of one shared type; undefined where everything may be changed. */
// biome-ignore lint/suspicious/noExplicitAny: yjs types every shared type's events differently, and none matter here
export type ProtectionOf = (parent: Y.AbstractType<any>, key: string) => WriteProtection | undefined;

/** For a document that keeps its entries as maps in one map: `fixed` are the keys of an entry that are made with it. */
export function entryProtection(
  entries: Y.Map<Y.Map<unknown>>,
  fixed: readonly string[],
  sealed: readonly Y.Map<unknown>[],
): ProtectionOf {
  const once = new Set(fixed);
  const never = new Set<unknown>(sealed);
  return (parent, key) => {
    if (parent === entries) return "made-once";
    if (never.has(parent)) return "sealed";
    return parent._item?.parent === entries && once.has(key) ? "made-once" : undefined;
  };
}

/** A plan's items, and what came with its file: machines and moves that a writer could change would change the findings. */
export function planProtection(doc: Y.Doc): ProtectionOf {
  const { items, meta, carried } = planParts(doc);
  return entryProtection(items, ["kind", "label", "script"], [meta, carried]);
}
