/** "This is the last one", "first move of the class", "final round". */
import { isTakenBack } from "./not-told.ts";
import type { SpokenClause } from "./sentences.ts";
import { spoken } from "./spoken-pattern.ts";
import type { ClaimReading, PartClaim } from "./types.ts";

/** After these words it is another one than this: "slower than the last one", "save it for the last round". */
const OTHER_ONE =
  "(?<!\\b(?:than|since|from|like|as|to|before|after|of|for|in|until|till|on|by|with|during|even|every|especially|hold|holding|save|keep) (?:the |your |our |that |this |a )?(?:very )?)";
const NOT_THIS =
  "(?! (?:but|of all|thing|to (?:move|drop|leave|lift|go|come|reach|touch)|who|that|was|were|again|you did|we did|felt|looked))";
const LAST_OR_FIRST = spoken(
  `${OTHER_ONE}\\b(?<which>last|final|first|opening|closing|very last|very first) ` +
    `(?<what>moves?|movement|exercise|one|rep|repetition|round|set|side|block|section|series)\\b${NOT_THIS}` +
    "(?: (?:of|in|for) (?:the |this |our |todays |your )?(?<of>class|session|day|workout|hour|lesson|morning|evening|block|section|series|today|tonight)| (?<today>today|tonight))?",
);
const THROUGH =
  /\b(?<which>last|final) (?:(?:time|go|pass) (?:round|around|through|at (?:it|this))|lap)\b|\bno more (?:rounds|sets|laps)\b|\b(?:last|final) of (?:the |our )?[a-z]+ (?:rounds|sets|laps|circuits)\b|\b(?:last|final) time (?:that )?(?:we|you) (?:will )?(?:do|see|meet) (?:this|it|these)\b|\b(?:not|never) see this(?: one| move)? again(?: today)?$/;
const DAY = "(?:the |our |this |todays )?(?:class|session|workout|day|lesson|today)";
const END = "(?:finish|end|close|stop|wrap up|round off|conclude)(?:es|s)?(?: off)?";
const BEGIN = "(?:start|begin|open|kick off|get going|get started|set off)s?(?: off)?";
const WITH_THIS = "(?:with|on|here with|by) (?:this|that)(?: one| move| exercise)?";
/** "We finish with this", "this closes the class", "with this we end", "the last thing we do today". */
const edgeOfClass = (verb: string, ing: string, order: string, nouns: string): RegExp =>
  new RegExp(
    [
      `\\b(?:we|you|i|class|the class|the session|today)(?: will| are going to| is going to)? ${verb}(?: ${DAY})? ${WITH_THIS}$`,
      `\\blets ${verb}(?: ${DAY})? ${WITH_THIS}$`,
      `\\b(?:we|you|i)(?: will)? ${verb} ${DAY} here$`,
      `^(?:and |so )?with this(?: one| move)? (?:we|i)(?: will)? ${verb}(?: ${DAY})?$`,
      `\\bthis (?:one |move )?(?:will )?${verb} (?:${DAY}|things)(?: off)?$`,
      `^(?:and |so )?(?:to ${verb}|${ing}) ${DAY}(?: with [a-z ]+)?$`,
      `\\bthis is (?:where|how|what) we ${verb}(?: with)?(?: ${DAY})?$`,
      `\\b(?:this|that|it) is (?:the |our |your |todays )?(?:${order} of ${DAY})`,
      `\\b${order} (?:thing|exercise|move|one) (?:that )?(?:we|you) (?:will )?do(?: today| in ${DAY})?$`,
      `\\b${order} (?:station|stop|job|task) (?:of|for|in) ${DAY}`,
      `^(?:and |so )?(?:this is|that is|here is|it is|here comes) (?:the|our|your|todays) (?:${nouns})(?: of ${DAY})?$`,
    ].join("|"),
  );
const ENDS_HERE = edgeOfClass(
  END,
  "(?:finishing|ending|closing|wrapping up)",
  "(?:last|final|end)",
  "closer|finisher|(?:grand )?finale",
);
const BEGINS_HERE = edgeOfClass(
  BEGIN,
  "(?:starting|beginning|opening|kicking off)",
  "(?:first|start|beginning)",
  "opener|starter",
);
/** "We finish with the plank", "that is the last of the curls": of this move only if that is its name. */
const A_NAME = "(?:the |an? |our |your |some |these |those )?(?<named>(?!this|that|it )[a-z]+(?: [a-z]+)?)$";
const ENDS_WITH = new RegExp(
  `^(?:and |so )?(?:(?:we|today we|i) (?:will )?(?:finish|end|close)|(?:finishing|ending|closing))(?: ${DAY})? with ${A_NAME}`,
);
const LAST_OF =
  /\b(?:the last of|no more) (?:the |these |our |your )?(?<named>[a-z]+(?: [a-z]+)?s)(?: (?:after this|today|for today))?$/;
const FIRST_UP =
  /^(?:and |so |okay )*first (?:up|on the list) (?:today|this (?:morning|evening|class))\b|\bthis (?:one )?gets us (?:started|going)\b/;
/** "We're on the last move", where "on" does not tell when something else is to be done. */
const onThe = (order: string): RegExp =>
  new RegExp(
    `^(?:and |so |now |okay )*(?:we|you) (?:are (?:already |still |only |just |now )*(?:on|at)|have (?:made it to|got to|come to|reached|arrived at)) (?:the |our |your )(?:very )?${order} (?:move|exercise|one)(?: now| already| (?:of|in) ${DAY})?$`,
  );
const ALL_THAT_IS_LEFT = /\b(?:you|we) (?:(?:only|just) )?have (?:(?:only|just) )?(?:got )?this (?:one|move) left$/;
const ON_THE_LAST = onThe("(?:last|final)");
const ON_THE_FIRST = onThe("(?:first|opening)");
/** Said of the move without calling it one. */
const OTHERWISE: readonly (readonly [RegExp, PartClaim])[] = [
  [THROUGH, { says: "last", what: "round" }],
  [ENDS_HERE, { says: "last", what: "move", of: "class" }],
  [BEGINS_HERE, { says: "first", what: "move", of: "class" }],
  [ENDS_WITH, { says: "last", what: "move", of: "class" }],
  [LAST_OF, { says: "last", what: "round" }],
  [ALL_THAT_IS_LEFT, { says: "last", what: "move" }],
  [ON_THE_LAST, { says: "last", what: "move" }],
  [ON_THE_FIRST, { says: "first", what: "move" }],
  [FIRST_UP, { says: "first", what: "move", of: "class" }],
];
const SPOKEN_OTHERWISE = OTHERWISE.map(([pattern, fact]) => ({ fact, pattern: spoken(pattern) }));

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

const namedIn = ({ groups }: RegExpExecArray): Pick<PartClaim, "named"> =>
  groups?.named === undefined ? {} : { named: groups.named };

export function partsIn({ words, at }: SpokenClause): ClaimReading[] {
  const other = SPOKEN_OTHERWISE.map(({ fact, pattern }) => ({ fact, found: pattern.exec(words) })).find(
    ({ found }) => found,
  );
  if (other?.found && !isTakenBack(words.slice(0, other.found.index), words))
    return [
      { fact: { ...other.fact, ...namedIn(other.found) }, at: at + other.found.index, length: other.found[0].length },
    ];
  const found = LAST_OR_FIRST.exec(words);
  const { which = "", what = "", of = found?.groups?.today } = found?.groups ?? {};
  if (!found || isTakenBack(words.slice(0, found.index), words)) return [];
  const says = /first|opening/.test(which) ? "first" : "last";
  const part = PARTS[what] ?? "one";
  // "The first one is for free" is about a repetition.
  if (says === "first" && part === "one" && of === undefined) return [];
  const within = of === undefined ? {} : ({ of: /block|section|series/.test(of) ? "block" : "class" } as const);
  return [{ fact: { says, what: part, ...within }, at: at + found.index, length: found[0].length }];
}
