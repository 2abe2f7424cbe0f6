/**
 * Words that only open a sentence or speak to people: "alright", "you guys". They are set off by commas, whether the coach
 * writes them or not, so that what is claimed stands by itself.
 */

/** Words that a comma may be set after or before; the rest of a clause. */
interface Addressed {
  readonly opening: number;
  readonly closing: number;
}

const OPENINGS =
  /^(?:(?:alright|all right|well(?: then)?|right then|okay(?: then)?|ok|oh|hey|yes|yeah|yep|lovely|great|perfect|brilliant|beautiful|excellent|remember|guys|folks|team|everyone|everybody|people|friends|come on(?: then)?|good news)(?= |$) ?)+(?!(?:over|past|under|more|to|of|is|are|that|and|will)\b)/;
const WHO =
  "(?:(?:my |you |you all )?(?:lovely )?(?:guys|folks|friends|people|darlings?|dears?|loves?|lovelies|ladies|gents|gentlemen|team|gang|lot)|everyone|everybody|all of you|yall)";
/** "Ten from everyone" is not said to them alone. */
const CLOSINGS = new RegExp(
  `(?<!\\b(?:of|for|from|to|with|by|and|the|all|like|than|these|those|your|our|a))(?: (?:${WHO}|please|okay|ok|alright|come on|lets go|here we go|off we go|i promise|believe me|thank you))+$`,
);

const countWords = (words: string): number => words.split(" ").filter((word) => word !== "").length;

/** How many words of a clause open it, and how many at its end speak to people. */
export function addressed(clause: string): Addressed {
  const opening = countWords(OPENINGS.exec(clause)?.[0] ?? "");
  const closing = countWords(CLOSINGS.exec(clause)?.[0] ?? "");
  const all = countWords(clause);
  return opening + closing >= all ? { opening: 0, closing: 0 } : { opening, closing };
}
