/** Which lines of a script went, came, moved and changed: those that still stand, in their order, are left out. */
import type { ScriptLine } from "#lib/plan/schema.ts";
import { hunksOf } from "./hunks.ts";

/** One line that is not as and where it was. */
export type OtherLine<L> =
  | { readonly how: "changed"; readonly was: L; readonly is: L }
  /** `after`: the line that it stands under now; null at the beginning. */
  | { readonly how: "moved"; readonly was: L; readonly is: L; readonly after: L | null }
  | { readonly how: "added"; readonly is: L }
  | { readonly how: "removed"; readonly was: L };

/** A stretch between two lines that stand. */
interface Gap<L> {
  readonly gone: readonly L[];
  readonly come: readonly { readonly line: L; readonly after: L | null }[];
}

/**
 * As few as can be, in the order of the lines now; what was removed stands before what came in its place. A changed line is
 * told against the most alike old one between the same two lines. Empty when all lines are the same. No line may be in both lists as
 * the same object, or twice in one.
 */
export function otherLines<L extends ScriptLine>(old: readonly L[], now: readonly L[]): OtherLine<L>[] {
  const gaps = gapsOf(old, now);
  const moved = movedLines(gaps);
  return gaps.flatMap((gap) => inGap(gap, moved));
}

const keyOf = ({ kind, text, at }: ScriptLine): string =>
  JSON.stringify([kind, text, at ? Object.entries(at).toSorted() : null]);

function gapsOf<L extends ScriptLine>(old: readonly L[], now: readonly L[]): Gap<L>[] {
  let grown = 0;
  return hunksOf(old.map(keyOf), now.map(keyOf)).map(({ from, to, words }) => {
    const start = from + grown;
    grown += words.length - (to - from);
    const come = now.slice(start, start + words.length);
    return { gone: old.slice(from, to), come: come.map((line, i) => ({ line, after: now[start + i - 1] ?? null })) };
  });
}

/** What went in one place and came in another, written the same: the new line by the old one and the reverse. */
function movedLines<L extends ScriptLine>(gaps: readonly Gap<L>[]): ReadonlyMap<L, L> {
  const left = new Map<string, L[]>();
  for (const line of gaps.flatMap(({ gone }) => gone)) left.set(keyOf(line), [...(left.get(keyOf(line)) ?? []), line]);
  return new Map(
    gaps.flatMap(({ come }) =>
      come.flatMap(({ line }) => {
        const was = left.get(keyOf(line))?.shift();
        return was ? [[line, was] as const, [was, line] as const] : [];
      }),
    ),
  );
}

function inGap<L extends ScriptLine>({ gone, come }: Gap<L>, moved: ReadonlyMap<L, L>): OtherLine<L>[] {
  const went = gone.filter((line) => !moved.has(line));
  const partners = mostAlike(
    went,
    come.flatMap(({ line }) => (moved.has(line) ? [] : [line])),
  );
  let told = 0;
  const removedTo = (end: number): OtherLine<L>[] => {
    const some = went.slice(told, end).map((was) => ({ how: "removed" as const, was }));
    told = Math.max(told, end);
    return some;
  };
  const inOrder = come.flatMap(({ line: is, after }): OtherLine<L>[] => {
    const from = moved.get(is);
    if (from) return [{ how: "moved", was: from, is, after }];
    const was = partners.get(is);
    if (!was) return [{ how: "added", is }];
    const before = removedTo(went.indexOf(was));
    told++;
    return [...before, { how: "changed", was, is }];
  });
  return [...inOrder, ...removedTo(went.length)];
}

/** Old lines by the new ones that they became: in order, and as alike as can be in all. */
function mostAlike<L extends ScriptLine>(went: readonly L[], come: readonly L[]): Map<L, L> {
  const [bags, newBags] = [went.map(wordBag), come.map(wordBag)];
  const alike = went.map((was, i) =>
    come.map((is, j) => likeness(was.kind === is.kind, bags[i] as WordBag, newBags[j] as WordBag)),
  );
  const best = Array.from({ length: went.length + 1 }, () => new Float64Array(come.length + 1));
  const at = (i: number, j: number): number => best[i]?.[j] ?? 0;
  const paired = (i: number, j: number): number => (alike[i]?.[j] ?? 0) + at(i + 1, j + 1);
  for (let i = went.length - 1; i >= 0; i--) {
    const row = best[i] as Float64Array;
    for (let j = come.length - 1; j >= 0; j--) row[j] = Math.max(at(i + 1, j), at(i, j + 1), paired(i, j));
  }
  const partners = new Map<L, L>();
  let [i, j] = [0, 0];
  while (i < went.length && j < come.length) {
    if (at(i, j) === paired(i, j) && (alike[i]?.[j] ?? 0) > 0) partners.set(come[j++] as L, went[i++] as L);
    else if (at(i, j) === at(i + 1, j)) i++;
    else j++;
  }
  return partners;
}

interface WordBag {
  readonly counts: ReadonlyMap<string, number>;
  readonly size: number;
}

function wordBag({ text }: ScriptLine): WordBag {
  const words = text.toLowerCase().match(/[\p{L}\p{N}’']+/gu) ?? [];
  const counts = new Map<string, number>();
  for (const word of words) counts.set(word, (counts.get(word) ?? 0) + 1);
  return { counts, size: words.length };
}

/** Two lines of one kind may be one line in other words; of two kinds, only where half of the words are the same. */
const OTHER_KIND_SHARE = 0.5;
const SAME_KIND = 0.05;

/** The share of words that both have (Dice's coefficient), and a little for the same kind; 0 for what is no pair. */
function likeness(sameKind: boolean, a: WordBag, b: WordBag): number {
  let both = 0;
  for (const [word, count] of a.counts) both += Math.min(count, b.counts.get(word) ?? 0);
  const share = a.size + b.size === 0 ? 1 : (2 * both) / (a.size + b.size);
  if (sameKind) return share + SAME_KIND;
  return share >= OTHER_KIND_SHARE ? share : 0;
}
