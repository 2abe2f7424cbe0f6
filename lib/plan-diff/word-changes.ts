/** Which words of a line went and which came, to be marked in the text itself. */
import { diff } from "lib0/diff/patience";

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
  for (const { index, remove, insert } of diff(was, is)) {
    add("same", was.slice(at, index));
    add("went", remove);
    add("came", insert);
    at = index + remove.length;
  }
  add("same", was.slice(at));
  return parts;
}

const wordsOf = (text: string): string[] => text.split(/\s+/).filter((word) => word !== "");
