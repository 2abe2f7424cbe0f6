/**
 * Where a text announces an exercise by its name: "coming up, the side plank". The name tells nobody to lie on the side.
 * Only what is next is read, since pages start with this and fetch the rest of the reader later.
 */
import { mayClaim } from "./may-claim.ts";
import { nextIn } from "./next.ts";
import { charsOf, sentencesOf } from "./sentences.ts";
import { namesAnExercise } from "./spoken-names.ts";

/** "Then the plank" may be what people do now. */
const OUTRIGHT = /\b(?:next|coming|after|follow\w*|get ready)\b/i;

/** Ranges of characters, up to but not including `to`. */
export const announcedIn = (text: string): readonly { from: number; to: number }[] => {
  // Most lines announce nothing, and this is asked of every set-up line.
  if (!OUTRIGHT.test(text) || !mayClaim(text)) return [];
  return sentencesOf(text).flatMap((sentence) =>
    nextIn(sentence).flatMap(({ fact, at, length }) => {
      if (fact.says !== "next" || !fact.plain) return [];
      const { from, to } = charsOf(sentence, at, length);
      const said = text.slice(from, to);
      const named = OUTRIGHT.test(said) ? namedIn(said) : undefined;
      return named ? [{ from: from + named.from, to: from + named.to }] : [];
    }),
  );
};

function namedIn(said: string): { from: number; to: number } | undefined {
  for (const article of said.matchAll(/\b(?:the|a|an|our|your)\s+/gi)) {
    const from = article.index + article[0].length;
    const words = [...said.slice(from).matchAll(/[\p{L}-]+/gu)].slice(0, 3);
    const noun = words.find(([word]) => namesAnExercise(word));
    if (noun) return { from, to: from + noun.index + noun[0].length };
  }
  return undefined;
}
