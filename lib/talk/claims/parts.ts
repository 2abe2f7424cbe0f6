/** "This is the last one", "first move of the class", "final round". */
import { isTakenBack } from "./not-told.ts";
import type { SpokenClause } from "./sentences.ts";
import type { ClaimReading, PartClaim } from "./types.ts";

/** After these words it is another one than this: "slower than the last one", "save it for the last round". */
const OTHER_ONE =
  "(?<!\\b(?:than|since|from|like|as|to|before|after|of|for|in|until|till|on|by|with|during|even|every|especially|hold|holding|save|keep) (?:the |your |our |that |this |a )?(?:very )?)";
const NOT_THIS =
  "(?! (?:but|of all|thing|to (?:move|drop|leave|lift|go|come|reach|touch)|who|that|was|were|again|you did|we did|felt|looked))";
const LAST_OR_FIRST = new RegExp(
  `${OTHER_ONE}\\b(?<which>last|final|first|opening|closing|very last|very first) ` +
    `(?<what>moves?|movement|exercise|one|rep|repetition|round|set|side|block|section|series)\\b${NOT_THIS}` +
    "(?: (?:of|in|for) (?:the |this |our |todays |your )?(?<of>class|session|day|workout|hour|lesson|morning|evening|block|section|series|today|tonight)| (?<today>today|tonight))?",
);
const THROUGH = /\b(?<which>last|final) (?:time|go|pass|lap) (?:round|around|through)\b|\bno more (?:rounds|sets)\b/;
const ENDS_HERE =
  /\b(?:we|class|the class|the session|today) (?:finish|finishes|end|ends|close|closes)(?: (?:the (?:class|session|day)|today))? (?:with|on|here with) this(?: one| move)?$|\bthis (?:one |move )?(?:is the last of the (?:class|day|session)|closes (?:the )?(?:class|session)|finishes the (?:class|session)|ends the (?:class|session))/;
const BEGINS_HERE =
  /\b(?:we|class|the class) (?:start|starts|begin|begins|open|opens)(?: (?:the (?:class|session|day)|today))? (?:with|on|here with) this(?: one| move)?$|\bthis (?:one |move )?(?:opens|begins|starts) (?:the )?(?:class|session)/;
/** Said of the move without calling it one. */
const OTHERWISE: readonly (readonly [RegExp, PartClaim])[] = [
  [THROUGH, { says: "last", what: "round" }],
  [ENDS_HERE, { says: "last", what: "move", of: "class" }],
  [BEGINS_HERE, { says: "first", what: "move", of: "class" }],
];
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

export function partsIn({ words, at }: SpokenClause): ClaimReading[] {
  const other = OTHERWISE.map(([pattern, fact]) => ({ fact, found: pattern.exec(words) })).find(({ found }) => found);
  if (other?.found && !isTakenBack(words.slice(0, other.found.index), words))
    return [{ fact: other.fact, at: at + other.found.index, length: other.found[0].length }];
  const found = LAST_OR_FIRST.exec(words);
  const { which = "", what = "", of = found?.groups?.today } = found?.groups ?? {};
  if (!found || isTakenBack(words.slice(0, found.index), words)) return [];
  const says = /first|opening/.test(which) ? "first" : "last";
  const part = PARTS[what] ?? "one";
  // "The first one is for free" is about a repetition.
  if (says === "first" && part === "one") return [];
  const within = of === undefined ? {} : ({ of: /block|section|series/.test(of) ? "block" : "class" } as const);
  return [{ fact: { says, what: part, ...within }, at: at + found.index, length: found[0].length }];
}
