/** Words that go and words that come: the difference of two texts of a line, and two differences in one. Pure. */

/** A stretch of the old text, as places among its tokens, and what takes its place. */
export interface Hunk {
  readonly from: number;
  readonly to: number;
  readonly words: readonly string[];
}

export interface WordStretch {
  readonly text: string;
  readonly how: "same" | "gone" | "come";
}

/** A brace written as two, a live field, a space, a word, or one other character. */
const TOKEN = /\{\{|\{[a-z-]+\}|\s+|[\p{L}\p{N}’']+|[\s\S]/gu;

export const wordTokens = (text: string): readonly string[] => text.match(TOKEN) ?? [];

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

/** The two texts as one, with what goes and what comes. */
export function stretchesOf(before: string, after: string): WordStretch[] {
  const tokens = wordTokens(before);
  const stretches: WordStretch[] = [];
  const add = (words: readonly string[], how: WordStretch["how"]) => {
    if (words.length > 0) stretches.push({ text: words.join(""), how });
  };
  let done = 0;
  for (const { from, to, words } of hunksOf(tokens, wordTokens(after))) {
    add(tokens.slice(done, from), "same");
    add(tokens.slice(from, to), "gone");
    add(words, "come");
    done = to;
  }
  add(tokens.slice(done), "same");
  return stretches;
}

/**
 * `now` with what turned `was` into `becomes`. Null where both changed the same words, so that one of the two would be
 * lost, where nothing is left, and where repeated words leave open what was changed, so that it would be done twice.
 */
export function mergedText(was: string, now: string, becomes: string): string | null {
  if (now === was || now === becomes) return becomes;
  const merged = bothChanges(was, now, becomes);
  const again = merged === null ? null : bothChanges(was, merged, becomes);
  return again === null || again === merged ? merged : null;
}

function bothChanges(was: string, now: string, becomes: string): string | null {
  const tokens = wordTokens(was);
  const proposed = hunksOf(tokens, wordTokens(becomes));
  const meanwhile = hunksOf(tokens, wordTokens(now));
  const own = proposed.filter((hunk) => !meanwhile.some((other) => isSame(hunk, other)));
  if (own.some((hunk) => meanwhile.some((other) => clash(hunk, other)))) return null;
  const merged = write(tokens, [...meanwhile, ...own]);
  return merged.trim() === "" ? null : merged;
}

const isSame = (a: Hunk, b: Hunk): boolean => a.from === b.from && a.to === b.to && a.words.join() === b.words.join();
const isInsert = ({ from, to }: Hunk): boolean => from === to;

function clash(a: Hunk, b: Hunk): boolean {
  if (isInsert(a) && isInsert(b)) return a.from === b.from;
  return a.from < b.to && b.from < a.to;
}

function write(tokens: readonly string[], hunks: readonly Hunk[]): string {
  const sorted = [...hunks].sort((a, b) => a.from - b.from || a.to - b.to);
  let text = "";
  let done = 0;
  for (const { from, to, words } of sorted) {
    text += tokens.slice(done, from).join("") + words.join("");
    done = Math.max(done, to);
  }
  return text + tokens.slice(done).join("");
}
