/** How alike two words are, for typos and shortened words. */

/**
 * The number of insertions, deletions, substitutions and swaps of neighbours that turn `a` into `b` (optimal string
 * alignment), or `max + 1` when it takes more than `max`. Time grows with the product of the lengths: use it for words,
 * not for whole texts.
 */
export function editDistance(a: string, b: string, max: number): number {
  if (Math.abs(a.length - b.length) > max) return max + 1;
  let older: number[] = [];
  let above = Array.from({ length: b.length + 1 }, (_, i) => i);
  for (let i = 1; i <= a.length; i++) {
    const row = [i];
    for (let j = 1; j <= b.length; j++) {
      const same = a[i - 1] === b[j - 1] ? 0 : 1;
      let best = Math.min((above[j] ?? 0) + 1, (row[j - 1] ?? 0) + 1, (above[j - 1] ?? 0) + same);
      const swapped = i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1];
      if (swapped) best = Math.min(best, (older[j - 2] ?? 0) + 1);
      row.push(best);
    }
    if (Math.min(...row) > max) return max + 1;
    older = above;
    above = row;
  }
  return Math.min(above[b.length] ?? 0, max + 1);
}

/** Longer words are not compared letter by letter. */
const LONGEST = 24;

/** 1 for the same word, less for one or two typos or the same first four letters, 0 for a different word. */
export function likeness(a: string, b: string): number {
  if (a === b) return 1;
  const [short, long] = a.length <= b.length ? [a, b] : [b, a];
  if (short.length < 4 || long.length > LONGEST) return 0;
  if (long.startsWith(short)) return 0.85;
  if (a[0] !== b[0] && a[1] !== b[0]) return 0;
  const allowed = short.length >= 8 ? 2 : 1;
  const slips = editDistance(a, b, allowed);
  return slips > allowed ? 0 : 1 - 0.12 * slips;
}
