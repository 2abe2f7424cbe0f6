/**
 * The parts of a shared document that are only ever added to (INV-07). Once a page has made an item, its map, its kind
 * and its texts are there for good: taking out is a mark. The server holds every page to this, so that a tampered page
 * cannot do what ours never do.
 */
import type * as Y from "yjs";
import { planParts } from "./layout.ts";

/** `made-once`: a page may create it, nobody may replace or erase it. `sealed`: no page may write it. */
type WriteProtection = "made-once" | "sealed";

/** The protection of one key of one shared type; undefined where anything may be changed. */
// biome-ignore lint/suspicious/noExplicitAny: yjs types every shared type's events differently, and none matter here
export type ProtectionOf = (parent: Y.AbstractType<any>, key: string) => WriteProtection | undefined;

/** For a document that keeps its entries as maps in one map: `fixed` are the keys created together with an entry. */
function entryProtection(
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

/**
 * A plan's items, and what came with its file: a writer who could change those machines and moves could change the
 * findings.
 */
export function planProtection(doc: Y.Doc): ProtectionOf {
  const { items, meta, carried } = planParts(doc);
  return entryProtection(items, ["kind", "label", "script"], [meta, carried]);
}
