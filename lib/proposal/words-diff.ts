/** Words that go and words that come: the difference of two texts of a line, and two differences in one. Pure. */
import { type Hunk, hunksOf } from "#lib/plan-diff/hunks.ts";

export interface WordStretch {
  readonly text: string;
  readonly how: "same" | "gone" | "come";
}

/** A brace written as two, a live field, a space, a word, or one other character. */
const TOKEN = /\{\{|\{[a-z-]+\}|\s+|[\p{L}\p{N}’']+|[\s\S]/gu;

export const wordTokens = (text: string): readonly string[] => text.match(TOKEN) ?? [];

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
