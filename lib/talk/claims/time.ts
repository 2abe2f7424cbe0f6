/** Time left, time of the work and time done: "last fifteen seconds", "about a minute in this one", "thirty seconds in". */
import { isTakenBack } from "./not-told.ts";
import { SPOKEN_NUMBER, spokenNumberOf } from "./number-phrases.ts";
import type { SpokenClause } from "./sentences.ts";
import { ANY_TIME, TIME_PHRASES } from "./time-phrases.ts";
import type { ClaimReading, TimeClaim } from "./types.ts";

const ROUGHLY =
  /\b(?:about|around|roughly|nearly|almost|more or less|give or take|or so|just under|just over|a bit|approximately|ish|some)\b/;
/** "Just under" is about that; "under" alone is a bound. */
const BOUND = /(?<!\bjust )\b(?:(?<most>under|less than)|(?<least>over|more than)) $/;
const ROUGH_BOUND = /\b(?:at least|up to|at most|every|each|within|(?<!\bput )in) $/;

/** The first phrase of a clause that tells a time. */
export function timeIn({ words, at, sentence }: SpokenClause): ClaimReading[] {
  for (const { which, pattern, least = 0, needs, around, sure, of } of TIME_PHRASES) {
    const found = pattern.exec(words);
    if (!found || (needs && !needs.test(found[0])) || (around && !around.test(sentence.words))) continue;
    const before = words.slice(0, found.index);
    const told =
      found.groups?.half === undefined
        ? durationOf(found.groups?.time ?? found.groups?.clock ?? "a minute")
        : HALF_MINUTE;
    if (!told || told.seconds < least || ROUGH_BOUND.test(before) || isTakenBack(before.replace(BOUND, ""), words))
      return [];
    const { what, of: isAnyWork } = named(found.groups?.what);
    // "Half an hour of work" is of the class.
    const ofPhrase = of === "move" && told.seconds >= LEAST_OF_CLASS ? undefined : of;
    const claimed = ofPhrase ?? ofWhat(found.groups?.of) ?? (told.seconds < LEAST_OF_CLASS ? isAnyWork : undefined);
    const fact: TimeClaim = {
      says: "time",
      ...told,
      which,
      ...(claimed ? { of: claimed } : {}),
      ...(what === undefined ? {} : { what }),
      ...boundOf(before),
      ...(ROUGHLY.test(sentence.words) ? { rough: true } : {}),
    };
    const length = found[0].trimStart().length;
    const where = { at: at + found.index + found[0].length - length, length };
    return [{ fact, ...where, ...(sure === false ? { sure } : {}) }];
  }
  return anyTimeIn(words, at);
}

const LEAST_OF_ANY = 15;
/** Words of a time that is neither the move's nor the class's. */
const OF_SOMETHING_ELSE =
  /\b(?:rest|pause|break|drink|water|sip|towel|breath|breaths|breathe|inhale|exhale|hold|each|every|per|apart|imagine|first|get|getting|find|grab|change|changeover|set up|swap|put|sit|lie|kneel|stand|between|rep|reps|repetition|count|counts|at a time|a time|old|up|down|out)\b/;

const OF_WHAT_IS_DONE = /\b(?:already|so far|behind (?:us|you)|put in|survived|managed|have done)\b/;
const whichOf = (words: string): TimeClaim["which"] =>
  OF_WHAT_IS_DONE.test(words) ? "done" : OF_WHAT_IS_LEFT.test(words) ? "left" : "any";
const OF_WHAT_IS_LEFT = /\b(?:leaves?|left|remain\w*|still|more|another|to go|to come|until|till)\b/;

const KEPT_UP = /\b(?:keep|keeping) (?:it|this|that) up\b/;

/** Against such a time only a plan speaks in which nothing lasts, or has lasted, as long. */
function anyTimeIn(words: string, at: number): ClaimReading[] {
  const found = ANY_TIME.exec(words);
  const told = found && durationOf(found.groups?.time ?? "");
  if (!found || !told || told.seconds < LEAST_OF_ANY || OF_SOMETHING_ELSE.test(words.replace(KEPT_UP, ""))) return [];
  const before = words.slice(0, found.index);
  if (ROUGH_BOUND.test(before) || isTakenBack(before.replace(BOUND, ""), words)) return [];
  const fact: TimeClaim = {
    ...{ says: "time", ...told, which: whichOf(words), ...boundOf(before) },
    ...(ROUGHLY.test(words) ? { rough: true } : {}),
  };
  return [{ fact, at: at + found.index, length: found[0].length, sure: false }];
}

function boundOf(before: string): Pick<TimeClaim, "bound"> {
  const { most, least } = BOUND.exec(before)?.groups ?? {};
  if (most === undefined && least === undefined) return {};
  return { bound: most === undefined ? "least" : "most" };
}

const LEAST_OF_CLASS = 300;
/** "Two minutes of leg work" is of whatever they do. */
const ANY_WORK = /\b(?:work|working|effort|action|fun|moving|movement|exercise|one|move|set|round|it|this)$/;
const named = (what: string | undefined): Pick<TimeClaim, "what" | "of"> =>
  what === undefined ? {} : ANY_WORK.test(what) ? { of: "move" } : { what };

function ofWhat(word: string | undefined): TimeClaim["of"] {
  if (word === undefined) return undefined;
  if (/^(?:class|session|day|workout)$/.test(word)) return "class";
  return /^(?:block|section|series)$/.test(word) ? "block" : "move";
}

type Duration = Pick<TimeClaim, "seconds" | "unit">;
const HALF_MINUTE: Duration = { seconds: 30, unit: "seconds" };
const PARTS: readonly (readonly [RegExp, number])[] = [
  [/and a half/, 0.5],
  [/and a quarter/, 0.25],
  [/and three quarters/, 0.75],
];
const COUNTED = new RegExp(`^(?<n>${SPOKEN_NUMBER})\\b.*? ?\\b(?<unit>seconds?|s|minutes?|m)\\b`);
const AND_SECONDS = new RegExp(`minutes? (?:and )?(?<n>${SPOKEN_NUMBER})(?<named> seconds?)?$`);

function hoursIn(words: string): number {
  if (/quarter of an hour$/.test(words)) return 0.25;
  if (/^three quarters of an hour$/.test(words)) return 0.75;
  if (/^half an? hour$/.test(words)) return 0.5;
  return (words.startsWith("two") ? 2 : 1) + (PARTS.find(([pattern]) => pattern.test(words))?.[1] ?? 0);
}

/** "A minute fifteen", "minute thirty". */
const MINUTE_AND = new RegExp(`^(?:an? )?minute (?:and )?(?<n>${SPOKEN_NUMBER})(?: seconds?)?$`);
const minuteAnd = (seconds: number): Duration | undefined =>
  seconds < 10 || seconds > 59 ? undefined : { seconds: 60 + seconds, unit: "seconds" };

/** Seconds of what `TIME` matched. */
function durationOf(words: string): Duration | undefined {
  const clock = /^(\d+):(\d\d)$/.exec(words);
  if (clock) return { seconds: Number(clock[1]) * 60 + Number(clock[2]), unit: "seconds" };
  if (words === "few seconds") return { seconds: 8, unit: "seconds" };
  if (/hour/.test(words)) return { seconds: 3600 * hoursIn(words), unit: "minutes" };
  const withSeconds = MINUTE_AND.exec(words)?.groups?.n;
  if (withSeconds) return minuteAnd(spokenNumberOf(withSeconds));
  if (/three quarters of a minute/.test(words)) return { seconds: 45, unit: "seconds" };
  if (/quarter of a minute/.test(words)) return { seconds: 15, unit: "seconds" };
  if (/^(?:a )?half (?:a )?minute/.test(words)) return HALF_MINUTE;
  const part = PARTS.find(([pattern]) => pattern.test(words))?.[1] ?? 0;
  if (/couple/.test(words)) return { seconds: 120, unit: "minutes" };
  if (/^(?:an?|another|the) (?:[a-z]+ )*minute/.test(words)) return { seconds: 60 * (1 + part), unit: "minutes" };
  if (new RegExp(`^${SPOKEN_NUMBER}$`).test(words)) return { seconds: spokenNumberOf(words), unit: "seconds" };
  const { n, unit } = COUNTED.exec(words.replace(/ and (?:a|three) [a-z]+/, ""))?.groups ?? {};
  if (!unit?.startsWith("m")) return { seconds: spokenNumberOf(n) + part, unit: "seconds" };
  const more = AND_SECONDS.exec(words)?.groups;
  const seconds = spokenNumberOf(more?.n);
  // "Two minutes, one more" is no time of 121 seconds.
  if (more && more.named === undefined && (seconds < 10 || seconds > 59)) return undefined;
  return { seconds: 60 * (spokenNumberOf(n) + part) + seconds, unit: more ? "seconds" : "minutes" };
}
