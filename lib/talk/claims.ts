/**
 * What a cue line claims about the plan: time left, halfway, last, first, side, what is next, how many springs, how many
 * rounds. It knows the few phrases that coaches use for these and ignores everything else, since a false alarm costs more
 * trust than a missed claim. Names of moves and springs are returned as words.
 */
import { perValue } from "#lib/memo/per-value.ts";
import { LIVE_FIELDS, type ScriptLine } from "#lib/plan/schema.ts";

export type Claim =
  | { readonly says: "time"; readonly seconds: number; readonly unit: "seconds" | "minutes"; readonly said: string }
  | { readonly says: "halfway"; readonly said: string }
  | {
      readonly says: "last" | "first";
      readonly what: ClaimedPart;
      readonly of?: "class" | "block";
      readonly said: string;
    }
  | { readonly says: "side"; readonly side: "left" | "right" | "other"; readonly then: boolean; readonly said: string }
  | { readonly says: "next"; readonly name: string; readonly said: string }
  /** `label`: the words before "springs", or after a bare count; "" for springs of any kind. */
  | {
      readonly says: "springs";
      readonly count: number;
      readonly label: string;
      readonly sure: boolean;
      readonly said: string;
    }
  | { readonly says: "rounds"; readonly count: number; readonly nth: boolean; readonly said: string };
type ClaimedPart = "move" | "one" | "round" | "side";

const NUMBERS: Readonly<Record<string, number>> = {
  no: 0,
  one: 1,
  two: 2,
  three: 3,
  four: 4,
  five: 5,
  six: 6,
  seven: 7,
  eight: 8,
  nine: 9,
  ten: 10,
  twelve: 12,
  fifteen: 15,
  twenty: 20,
  "twenty five": 25,
  thirty: 30,
  forty: 40,
  "forty five": 45,
  fifty: 50,
  sixty: 60,
  ninety: 90,
  first: 1,
  second: 2,
  third: 3,
  fourth: 4,
  fifth: 5,
};
const N =
  "(?<n>\\d{1,3}|twenty five|forty five|one|two|three|four|five|six|seven|eight|nine|ten|twelve|fifteen|twenty|thirty|forty|fifty|sixty|ninety)";
const numberOf = (word: string | undefined): number => {
  const digits = Number(word);
  return Number.isFinite(digits) ? digits : Object.hasOwn(NUMBERS, word ?? "") ? (NUMBERS[word ?? ""] ?? 0) : 0;
};

/** A claim contains one of these; most lines do not and need no further reading. */
const WORTH_READING =
  /second|minute|coming|left|right|to go|remain|more|last|final|first|half|side|next|spring|round|\bset|\bon\b|\d|\b(?:no|one|two|three|four|five|six)\b/i;

/** The claims in a text. A live field claims nothing, since the plan fills it in. */
export const claimsIn = (text: string): readonly Claim[] =>
  WORTH_READING.test(text) ? clausesOf(text).flatMap(claimsOfClause) : [];

/** The claims of a line, worked out once per line. */
export const claimsOf = perValue(({ text }: ScriptLine): readonly Claim[] => claimsIn(text));

/** The clauses between punctuation, in lower case with single spaces. */
function clausesOf(text: string): string[] {
  const fields = text.slice(0, 2000).replace(/\{([a-z-]+)\}/g, (all, name) => (isField(name) ? " livefield " : all));
  return fields
    .normalize("NFKD")
    .toLowerCase()
    .replace(/['’]/g, "")
    .replace(/(?<=[a-z])-(?=[a-z])/g, " ")
    .split(/[.,;:!?()"“”]+|\s[-–—]+\s/)
    .map((clause) => clause.replace(/[^a-z0-9]+/g, " ").trim())
    .filter((clause) => clause !== "");
}
const isField = (name: string): boolean => LIVE_FIELDS.some((field) => field === name);

const READERS: readonly ((clause: string) => Claim | undefined)[] = [
  timeLeft,
  halfway,
  lastOrFirst,
  sideOf,
  nextMove,
  springCount,
  rounds,
];
const claimsOfClause = (clause: string): Claim[] =>
  READERS.flatMap((reader) => {
    const claim = reader(clause);
    return claim ? [claim] : [];
  });

const UNIT = "(?<unit>seconds?|secs?|minutes?|mins?)";
const AND_A_HALF = "(?<half> and a half)?";
/** Not followed by these: then it is time left of something else, as of a breath or a hold, or per side. */
const NOT_OF =
  "(?! (?:on|at|in|with|for|of|each|per|every|apart|up|down|than)\\b(?! (?:the clock|the class|class|this|this move|the move|us|you)\\b))";
const TIMES = [
  new RegExp(`\\b${N}${AND_A_HALF} (?:more )?${UNIT} (?:are |is )?(?:left|to go|remaining|still to (?:go|come))\\b`),
  new RegExp(`\\b(?:last|final) ${N}${AND_A_HALF} ${UNIT}\\b${NOT_OF}`),
  new RegExp(`\\b${N}${AND_A_HALF} more ${UNIT}\\b${NOT_OF}`),
  new RegExp(`\\b${N}${AND_A_HALF} ${UNIT} more\\b${NOT_OF}`),
  new RegExp(
    `\\b(?:theres|there are|there is|we have|you have|weve got|youve got|you got|only|just) (?:only |just |still |another )?${N} ${UNIT}$`,
  ),
];
const ONE_LEFT =
  /\b(?<much>half an?|an?|a full|one|the last|last|final) (?<unit>minute) (?:more )?(?:is )?(?:left|to go|remaining)\b|\b(?:the |your |this is the |our )?(?:last|final) (?<last>half )?minute\b/;
/** Fewer seconds, as in "hold two more seconds", are about one repetition. */
const SHORTEST_MORE = 6;

function timeLeft(clause: string): Claim | undefined {
  for (const [i, pattern] of TIMES.entries()) {
    const found = pattern.exec(clause);
    if (!found) continue;
    const { n, half, unit } = found.groups ?? {};
    const isMinutes = unit?.startsWith("m") ?? false;
    const seconds = (numberOf(n) + (half ? 0.5 : 0)) * (isMinutes ? 60 : 1);
    if (i > 0 && !isMinutes && seconds < SHORTEST_MORE) return undefined;
    return { says: "time", seconds, unit: isMinutes ? "minutes" : "seconds", said: found[0] };
  }
  const found = ONE_LEFT.exec(clause);
  if (!found) return undefined;
  const half = found.groups?.much?.startsWith("half") || found.groups?.last !== undefined;
  return { says: "time", seconds: half ? 30 : 60, unit: half ? "seconds" : "minutes", said: found[0] };
}

/** Not "bend half way", which is a depth. */
const HALFWAY =
  /\b(?:were|youre|we are|you are|thats|that is|this is|now) (?:about |nearly |almost |already )?(?:at )?(?:the )?half ?way(?: (?:there|through|done|mark|point))?$|\bhalf ?way (?:there|done|mark|point)\b|^(?:and )?half ?way through(?: (?:this|the) (?:move|class|set|block))?$|^half ?time$|\bhalf of (?:it|the time|the class) is (?:done|gone|over)\b/;
function halfway(clause: string): Claim | undefined {
  const found = HALFWAY.exec(clause);
  return found ? { says: "halfway", said: found[0] } : undefined;
}

const LAST_OR_FIRST = new RegExp(
  "(?<!\\b(?:than|since|from|like|as|to|before|after|of) (?:the |your |our |that )?)\\b(?<which>last|final|first|very last|very first) " +
    "(?<what>moves?|exercise|one|rep|repetition|round|set|side)\\b" +
    "(?! (?:but|of all|thing|to (?:move|drop|leave|lift|go|come|reach|touch)|who|that|was|were|again|you did|we did))" +
    "(?: (?:of|in) (?:the |this |our |todays )?(?<of>class|session|day|block|section|series))?",
);
function lastOrFirst(clause: string): Claim | undefined {
  const found = LAST_OR_FIRST.exec(clause);
  const { which = "", what = "", of } = found?.groups ?? {};
  if (!found) return undefined;
  const part: ClaimedPart = /^(moves?|exercise)$/.test(what)
    ? "move"
    : /^(round|set)$/.test(what)
      ? "round"
      : what === "side"
        ? "side"
        : "one";
  const says = which.endsWith("first") ? "first" : "last";
  // "The first one is for free" is about a repetition.
  if (says === "first" && part === "one") return undefined;
  const within = of === undefined ? {} : { of: /class|session|day/.test(of) ? ("class" as const) : ("block" as const) };
  return { says, what: part, ...within, said: found[0] };
}

/** A clause that only names the side. "Reach to the other side" and "feel the left side" say where, not which side it is. */
const SIDE = new RegExp(
  "^(?:okay |ok |and |so |now |were |we are |this is |thats |here is |its |on |onto |to |over |back |switch |switching |change |changing |swap |" +
    "swapping |move |same |thing |again |repeat |it |all |start |starting |begin |with |for |time for |then |lets |do |go |coming up |next )*" +
    "(?:the |your |our )?(?<side>left|right|other|second|opposite) side(?<then> (?:next|after|coming up))?(?: (?:now|first|please|again|this time|here we go))?$",
);
function sideOf(clause: string): Claim | undefined {
  const found = SIDE.exec(clause);
  const said = found?.groups?.side;
  if (!found || said === undefined) return undefined;
  const side = said === "left" || said === "right" ? said : "other";
  const then = found.groups?.then !== undefined || /^(?:and )?(?:then|next|coming up)\b/.test(clause);
  return { says: "side", side, then, said: clause };
}

const NEXT = [
  /^(?:and |then |the )*(?<name>[a-z0-9 ]{3,60}?) (?:is |comes |coming |is coming |up )?(?:up )?next$/,
  /^(?:and |then )*(?:next up|up next|next|next is|next comes|next up is|next move is|next we have|coming up|coming next|coming up next)(?: is| a| an| the)* (?<name>[a-z0-9 ]{3,60})$/,
];
const NO_NAME = /\b(?:livefield|side|whats?|what is|you|your|time|breath|rep|week)\b/;
function nextMove(clause: string): Claim | undefined {
  for (const pattern of NEXT) {
    const name = pattern.exec(clause)?.groups?.name?.trim();
    if (name !== undefined && !NO_NAME.test(name)) return { says: "next", name, said: clause };
  }
  return undefined;
}

/** Springs are added or taken off, so the number is not how many there are. */
const CHANGES =
  /\b(?:add|adding|take|taking|drop|dropping|remove|lose|swap|change|put|another|more|extra|less|fewer|off|down|up|per|each|if|or|maybe|try|for the)\b/;
const ALL_SPRINGS = new RegExp(
  `\\b(?:${N}|(?<none>no)) (?<label>(?:[a-z]+ ){0,2})springs?\\b(?! (?:less|more|off|lighter|heavier|from|back|clean))`,
);
const BARE = new RegExp(
  `^(?:youve got |you have |we have |its |just |and |on |with )*${N} (?<label>[a-z]+(?: [a-z]+)?)(?<on> on)?$`,
);
function springCount(clause: string): Claim | undefined {
  if (CHANGES.test(clause)) return undefined;
  const named = ALL_SPRINGS.exec(clause);
  if (named) {
    const { n, label = "" } = named.groups ?? {};
    return { says: "springs", count: numberOf(n ?? "no"), label: label.trim(), sure: true, said: named[0] };
  }
  const bare = BARE.exec(clause);
  const { n, label = "" } = bare?.groups ?? {};
  return bare
    ? { says: "springs", count: numberOf(n), label: label.replace(/ on$/, ""), sure: false, said: clause }
    : undefined;
}

const ROUNDS = new RegExp(
  `\\b${N} (?:rounds|sets)\\b(?! (?:of (?:breath|breathing|applause)|a week|more|left|to go|ago|each day))`,
);
const NTH_ROUND =
  /\b(?:round|set) (?:number )?(?<n>one|two|three|four|five|[1-9])\b(?=$| of\b(?! springs)| now\b| here\b| starts?\b)|\b(?<nth>second|third|fourth|fifth) (?:round|set)\b/;
function rounds(clause: string): Claim | undefined {
  const nth = NTH_ROUND.exec(clause);
  if (nth) return { says: "rounds", count: numberOf(nth.groups?.n ?? nth.groups?.nth), nth: true, said: nth[0] };
  const found = ROUNDS.exec(clause);
  return found ? { says: "rounds", count: numberOf(found.groups?.n), nth: false, said: found[0] } : undefined;
}
