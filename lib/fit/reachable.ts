/** Whether any times at all add up to a sum, whatever they cost: asked before the search widens for long, so that it ends. */
import { endsOf, type SumRange } from "./lattice.ts";
import { type Variable, valuesWithin } from "./values.ts";

/** Steps of arithmetic that the question is worth. */
const MOST_WORK = 100_000_000;
const WORD = 32;

/** False only when no answer exists: where asking would take too long it is true. */
export function reachable(variables: readonly Variable[], { unit, first, last }: SumRange): boolean {
  const words = Math.ceil((last + 1) / WORD);
  let work = MOST_WORK;
  // Bit i of `sums` stands for the sum of i units above the least.
  let sums = Uint32Array.of(1);
  for (const v of variables) {
    const ends = endsOf(v);
    if (!ends) return false;
    const most = ends[0] + (last * unit) / v.spots.length;
    const adds = valuesWithin(v, ends[0], most).map((s) => Math.round(((s - ends[0]) * v.spots.length) / unit));
    work -= adds.length * words;
    if (work < 0) return true;
    sums = added(sums, adds, words);
  }
  for (let i = first; i <= last; i++) if (((sums[Math.floor(i / WORD)] ?? 0) >>> (i % WORD)) & 1) return true;
  return false;
}

/** All sums that are one of `sums` plus one of `adds`, in at most so many words. */
function added(sums: Uint32Array, adds: readonly number[], most: number): Uint32Array<ArrayBuffer> {
  const words = Math.min(most, sums.length + Math.floor((adds.at(-1) ?? 0) / WORD) + 1);
  const all = new Uint32Array(words);
  for (const add of adds) {
    const [skip, shift] = [Math.floor(add / WORD), add % WORD];
    for (let i = 0; i < sums.length && i + skip < words; i++) {
      const word = sums[i] ?? 0;
      all[i + skip] = (all[i + skip] ?? 0) | (word << shift);
      if (shift > 0 && i + skip + 1 < words) all[i + skip + 1] = (all[i + skip + 1] ?? 0) | (word >>> (WORD - shift));
    }
  }
  return all;
}
