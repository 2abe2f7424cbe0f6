/**
 * Whether two pieces of plain data are equal. The order of keys does not matter; a key holding undefined counts as
 * missing.
 */
export function sameData(a: unknown, b: unknown): boolean {
  if (Object.is(a, b) || a === b) return true;
  if (typeof a !== "object" || typeof b !== "object" || a === null || b === null) return false;
  if (Array.isArray(a) !== Array.isArray(b)) return false;
  const left = entriesOf(a);
  const right = new Map(entriesOf(b));
  return left.length === right.size && left.every(([key, value]) => right.has(key) && sameData(value, right.get(key)));
}

const entriesOf = (value: object): [string, unknown][] => Object.entries(value).filter(([, v]) => v !== undefined);
