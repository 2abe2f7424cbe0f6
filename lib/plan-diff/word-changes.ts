/** Which words of a line went and which came, to be marked in the text itself. */
import { hunksOf } from "./hunks.ts";

export interface WordsPart {
  readonly how: "same" | "went" | "came";
  /** One or more words, one space between two. */
  readonly words: string;
}

/** In reading order, what went before what came in its place. Spaces alone are no change. */
export function wordChanges(before: string, after: string): WordsPart[] {
  const [was, is] = [wordsOf(before), wordsOf(after)];
  const parts: WordsPart[] = [];
  const add = (how: WordsPart["how"], words: readonly string[]) => {
    if (words.length > 0) parts.push({ how, words: words.join(" ") });
  };
  let at = 0;
  for (const { from, to, words } of hunksOf(was, is)) {
    add("same", was.slice(at, from));
    add("went", was.slice(from, to));
    add("came", words);
    at = to;
  }
  add("same", was.slice(at));
  return parts;
}

const wordsOf = (text: string): string[] => text.split(/\s+/).filter((word) => word !== "");
