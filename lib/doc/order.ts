/** Order of items: a fractional key on each item, ties broken by id, so that moving never means delete and insert. */
import { generateKeyBetween } from "fractional-indexing";

export interface Ordered {
  readonly id: string;
  readonly order: string;
}

/** Total order over items. Compares code units: a locale's order would differ between replicas. */
export function byOrder(a: Ordered, b: Ordered): number {
  if (a.order !== b.order) return a.order < b.order ? -1 : 1;
  if (a.id !== b.id) return a.id < b.id ? -1 : 1;
  return 0;
}

/**
 * A key that puts something after `afterId` (null: at the top) in `sorted`. Two people may have inserted at one place
 * and hold equal keys; since nothing fits between equal keys, they are skipped.
 */
export function keyAfter(sorted: readonly Ordered[], afterId: string | null): string {
  const index = afterId === null ? -1 : sorted.findIndex((o) => o.id === afterId);
  const before = index < 0 ? null : (sorted[index]?.order ?? null);
  if (afterId !== null && index < 0) return keyAtEnd(sorted);
  let next = index + 1;
  while (before !== null && sorted[next]?.order === before) next++;
  return between(before, sorted[next]?.order ?? null);
}

export function keyAtEnd(sorted: readonly Ordered[]): string {
  return between(sorted.at(-1)?.order ?? null, null);
}

/** Keys from a damaged document may be malformed; appending a digit still keeps code unit order. */
function between(a: string | null, b: string | null): string {
  try {
    return generateKeyBetween(a, b);
  } catch {
    return a === null ? generateKeyBetween(null, null) : `${a}V`;
  }
}
