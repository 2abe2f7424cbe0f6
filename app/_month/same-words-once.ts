/** What is open in a month, for a page that has room for each sentence once. Pure. */
import type { FindingLine } from "#lib/tide/types.ts";

/** A finding and its day, YYYY-MM-DD. */
export interface OnPaper {
  readonly date: string;
  readonly line: Pick<FindingLine, "words" | "level">;
}

/** Each sentence once, where it comes first, with each of its days once, in the order given. */
export function sameWordsOnce(
  lines: readonly OnPaper[],
): { readonly words: string; readonly dates: readonly string[] }[] {
  const byWords = new Map<string, string[]>();
  for (const { date, line } of lines) {
    const dates = byWords.get(line.words) ?? [];
    byWords.set(line.words, dates);
    if (!dates.includes(date)) dates.push(date);
  }
  return [...byWords].map(([words, dates]) => ({ words, dates }));
}
