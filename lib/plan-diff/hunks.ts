/** What has to change in one list of words to read as another, as little as can be. */

/** A stretch of the old words, as places among them, and what takes its place. */
export interface Hunk {
  readonly from: number;
  readonly to: number;
  readonly words: readonly string[];
}

/** What has to change in `before` to read as `after`, in order; nothing in common is replaced. */
export function hunksOf(before: readonly string[], after: readonly string[]): Hunk[] {
  let start = 0;
  while (start < Math.min(before.length, after.length) && before[start] === after[start]) start++;
  let end = 0;
  const room = Math.min(before.length, after.length) - start;
  while (end < room && before[before.length - 1 - end] === after[after.length - 1 - end]) end++;
  const [old, now] = [before.slice(start, before.length - end), after.slice(start, after.length - end)];
  return between(old, now, start);
}

/** By the longest common subsequence of what is between the common start and end. */
function between(old: readonly string[], now: readonly string[], offset: number): Hunk[] {
  const length = commonLengths(old, now);
  const hunks: Hunk[] = [];
  let [i, j] = [0, 0];
  while (i < old.length || j < now.length) {
    const [from, first] = [i, j];
    while ((i < old.length || j < now.length) && !(i < old.length && j < now.length && old[i] === now[j])) {
      const skipOld = i < old.length && (j >= now.length || at(length, i + 1, j) >= at(length, i, j + 1));
      if (skipOld) i++;
      else j++;
    }
    if (i > from || j > first) hunks.push({ from: offset + from, to: offset + i, words: now.slice(first, j) });
    while (i < old.length && j < now.length && old[i] === now[j]) [i, j] = [i + 1, j + 1];
  }
  return hunks;
}

const at = (table: readonly Uint16Array[], i: number, j: number): number => table[i]?.[j] ?? 0;

/** For each pair of places, the length of the longest common subsequence of what follows. */
function commonLengths(old: readonly string[], now: readonly string[]): Uint16Array[] {
  const table = Array.from({ length: old.length + 1 }, () => new Uint16Array(now.length + 1));
  for (let i = old.length - 1; i >= 0; i--) {
    const row = table[i] ?? new Uint16Array();
    for (let j = now.length - 1; j >= 0; j--)
      row[j] = old[i] === now[j] ? at(table, i + 1, j + 1) + 1 : Math.max(at(table, i + 1, j), at(table, i, j + 1));
  }
  return table;
}
