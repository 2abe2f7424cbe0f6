/**
 * Whether two pieces of plain data are equal. The order of keys does not matter; a key holding undefined counts as
 * missing. Asked of every plate at every letter, so nothing is built here.
 */
export function sameData(a: unknown, b: unknown): boolean {
  if (Object.is(a, b) || a === b) return true;
  if (typeof a !== "object" || typeof b !== "object" || a === null || b === null) return false;
  if (Array.isArray(a) || Array.isArray(b)) return Array.isArray(a) && Array.isArray(b) && sameList(a, b);
  return sameFields(a as Fields, b as Fields);
}

type Fields = Readonly<Record<string, unknown>>;

function sameList(a: readonly unknown[], b: readonly unknown[]): boolean {
  if (a.length !== b.length) return false;
  for (let i = 0; i < a.length; i++) if (!sameData(a[i], b[i])) return false;
  return true;
}

function sameFields(a: Fields, b: Fields): boolean {
  let more = 0;
  for (const key of Object.keys(a)) {
    if (a[key] === undefined) continue;
    if (!Object.hasOwn(b, key) || !sameData(a[key], b[key])) return false;
    more++;
  }
  for (const key of Object.keys(b)) if (b[key] !== undefined) more--;
  return more === 0;
}
