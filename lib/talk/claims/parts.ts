/** "This is the last one", "first move of the class", "final round". */
import { isTakenBack } from "./not-told.ts";
import type { Clause } from "./sentences.ts";
import type { PartClaim, Reading } from "./types.ts";

/** After these words it is another one than this: "slower than the last one", "save it for the last round". */
const OTHER_ONE =
  "(?<!\\b(?:than|since|from|like|as|to|before|after|of|for|in|until|till|on|by|with|during|even|every|especially|hold|holding|save|keep) (?:the |your |our |that |this |a )?(?:very )?)";
const NOT_THIS =
  "(?! (?:but|of all|thing|to (?:move|drop|leave|lift|go|come|reach|touch)|who|that|was|were|again|you did|we did|felt|looked))";
const LAST_OR_FIRST = new RegExp(
  `${OTHER_ONE}\\b(?<which>last|final|first|very last|very first) ` +
    `(?<what>moves?|movement|exercise|one|rep|repetition|round|set|side|block|section|series)\\b${NOT_THIS}` +
    "(?: (?:of|in|for) (?:the |this |our |todays |your )?(?<of>class|session|day|workout|hour|lesson|morning|evening|block|section|series|today|tonight)| (?<today>today|tonight))?",
);
const PARTS: Readonly<Record<string, PartClaim["what"]>> = {
  move: "move",
  moves: "move",
  movement: "move",
  exercise: "move",
  round: "round",
  set: "round",
  side: "side",
  block: "block",
  section: "block",
  series: "block",
};

export function partsIn({ words, at }: Clause): Reading[] {
  const found = LAST_OR_FIRST.exec(words);
  const { which = "", what = "", of = found?.groups?.today } = found?.groups ?? {};
  if (!found || isTakenBack(words.slice(0, found.index), words)) return [];
  const says = which.endsWith("first") ? "first" : "last";
  const part = PARTS[what] ?? "one";
  // "The first one is for free" is about a repetition.
  if (says === "first" && part === "one") return [];
  const within = of === undefined ? {} : ({ of: /block|section|series/.test(of) ? "block" : "class" } as const);
  return [{ fact: { says, what: part, ...within }, at: at + found.index, length: found[0].length }];
}
