/** What one transaction did to plain keys, in flat maps of values and in maps whose entries are maps (items, slots). */
import * as Y from "yjs";
import { type AnyMap, isFresh, type KeyState, keyStateBefore, keyStateNow } from "./key-state.ts";

/** How an entry is marked as taken out, since it is never erased. */
export interface TakenOutMark {
  readonly key: string;
  /** The mark's value where the making of the entry was undone. */
  readonly value: unknown;
}

export interface KeyChange {
  readonly map: AnyMap;
  readonly key: string;
  /** The entry's id; null for a key of a flat map. */
  readonly entry: string | null;
  /** What undoing this change brings back. */
  readonly before: KeyState;
  /** What the key must still show for the change to be undone. */
  readonly after: KeyState;
  /** True where undoing this change undoes the making of the entry. */
  readonly made: boolean;
}

// biome-ignore lint/suspicious/noExplicitAny: yjs types every shared type's events differently, and none matter here
export type AnySharedType = Y.AbstractType<any>;

export function changesIn(
  transaction: Y.Transaction,
  scopes: readonly AnySharedType[],
  out: TakenOutMark,
): KeyChange[] {
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

function isEntry({ _item }: { readonly _item: Y.Item | null }, scopes: readonly AnySharedType[]): boolean {
  const parent = _item?.parent;
  return parent instanceof Y.Map && scopes.includes(parent as AnySharedType);
}

/**
 * Making an entry is undone by its mark, like any value of the entry: only while nobody else has set that mark since.
 */
function rootChange(transaction: Y.Transaction, root: AnyMap, key: string, out: TakenOutMark): KeyChange | null {
  const made = root.get(key);
  if (!(made instanceof Y.Map)) return valueChange(transaction, root, key);
  const before: KeyState = { of: null, value: out.value };
  return { map: made, key: out.key, entry: key, before, after: keyStateNow(made, out.key), made: true };
}

function valueChange(transaction: Y.Transaction, map: AnyMap, key: string): KeyChange | null {
  const before = keyStateBefore(transaction, map, key);
  const after = keyStateNow(map, key);
  const nothing = before.of === after.of || (before.value === undefined && after.value === undefined);
  if (nothing || [before.value, after.value].some((value) => value instanceof Y.AbstractType)) return null;
  return { map, key, entry: map._item?.parentSub ?? null, before, after, made: false };
}

/** Joins two runs of changes into one step. */
export function joinedChanges(first: readonly KeyChange[], second: readonly KeyChange[]): KeyChange[] {
  const list = [...first];
  for (const change of second) {
    const at = list.findIndex(({ map, key }) => map === change.map && key === change.key);
    const earlier = list[at];
    if (earlier) list[at] = { ...earlier, after: change.after };
    else list.push(change);
  }
  return list;
}

/** The entries whose texts a transaction wrote in. */
export function entriesWritten(transaction: Y.Transaction, scopes: readonly AnySharedType[]): AnyMap[] {
  const entries = new Set<AnyMap>();
  for (const type of transaction.changed.keys()) {
    if (type instanceof Y.Map) continue;
    for (let at = type.parent; at; at = at.parent) if (at instanceof Y.Map && isEntry(at, scopes)) entries.add(at);
  }
  return [...entries];
}
