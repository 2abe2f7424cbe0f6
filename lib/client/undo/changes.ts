/** What one transaction did to plain keys: to flat maps of values, and to maps whose entries are maps (items, slots). */
import * as Y from "yjs";
import { type AnyMap, isFresh, type Stand, standBefore, standNow } from "./stand.ts";

/** How an entry is marked as taken out, since it is never erased. */
export interface TakenOut {
  readonly key: string;
  /** The mark where its making was taken back. */
  readonly value: unknown;
}

export interface KeyChange {
  readonly map: AnyMap;
  readonly key: string;
  /** The entry's id; null for a key of a flat map. */
  readonly entry: string | null;
  /** What undoing this brings back. */
  readonly before: Stand;
  /** What must still count for it to be brought back. */
  readonly after: Stand;
  /** It undoes the making of the entry. */
  readonly made: boolean;
}

// biome-ignore lint/suspicious/noExplicitAny: yjs types every shared type's events differently, and none matter here
export type AnyType = Y.AbstractType<any>;

export function changesIn(transaction: Y.Transaction, scopes: readonly AnyType[], out: TakenOut): KeyChange[] {
  const changes: KeyChange[] = [];
  for (const [type, keys] of transaction.changed) {
    if (!(type instanceof Y.Map) || (type._item && isFresh(transaction, type._item))) continue;
    const root = scopes.includes(type);
    if (!root && !isEntry(type, scopes)) continue;
    for (const key of keys) {
      if (key === null) continue;
      const change = root ? rootChange(transaction, type, key, out) : valueChange(transaction, type, key);
      if (change) changes.push(change);
    }
  }
  return changes;
}

function isEntry({ _item }: { readonly _item: Y.Item | null }, scopes: readonly AnyType[]): boolean {
  const parent = _item?.parent;
  return parent instanceof Y.Map && scopes.includes(parent as AnyType);
}

/** A making is undone by the mark, as any value of the entry is: only while nobody else has set that mark since. */
function rootChange(transaction: Y.Transaction, root: AnyMap, key: string, out: TakenOut): KeyChange | null {
  const made = root.get(key);
  if (!(made instanceof Y.Map)) return valueChange(transaction, root, key);
  const before: Stand = { of: null, value: out.value };
  return { map: made, key: out.key, entry: key, before, after: standNow(made, out.key), made: true };
}

function valueChange(transaction: Y.Transaction, map: AnyMap, key: string): KeyChange | null {
  const before = standBefore(transaction, map, key);
  const after = standNow(map, key);
  const nothing = before.of === after.of || (before.value === undefined && after.value === undefined);
  if (nothing || [before.value, after.value].some((value) => value instanceof Y.AbstractType)) return null;
  return { map, key, entry: map._item?.parentSub ?? null, before, after, made: false };
}

/** Two runs of changes as one step. */
export function joined(first: readonly KeyChange[], second: readonly KeyChange[]): KeyChange[] {
  const list = [...first];
  for (const change of second) {
    const at = list.findIndex(({ map, key }) => map === change.map && key === change.key);
    const earlier = list[at];
    if (earlier) list[at] = { ...earlier, after: change.after };
    else list.push(change);
  }
  return list;
}

/** The entries in whose texts a transaction wrote. */
export function entriesWritten(transaction: Y.Transaction, scopes: readonly AnyType[]): AnyMap[] {
  const entries = new Set<AnyMap>();
  for (const type of transaction.changed.keys()) {
    if (type instanceof Y.Map) continue;
    for (let at = type.parent; at; at = at.parent) if (at instanceof Y.Map && isEntry(at, scopes)) entries.add(at);
  }
  return [...entries];
}
