/**
 * Which way the breath goes when: "exhale as you push out", "on the way back, breathe in", "out as the hips rise". "Breathe
 * all the way in" is about the breath alone.
 */
import { motionIn } from "./motions.ts";
import { isOfAnotherDay } from "./not-told.ts";
import type { Sentence } from "./sentences.ts";
import { spoken } from "./spoken-pattern.ts";
import type { BreathClaim, ClaimReading } from "./types.ts";

const SLOWLY =
  "(?: (?:again|it|slowly|strongly|fully|hard|gently|long|sharply|softly|all the way|completely|everything|loudly|through (?:the |your )?(?:nose|mouth|(?:pursed )?lips|teeth)|for (?:two|three|four|five)(?: counts)?))*";
const AIR =
  "(?:(?:the|your|all|that|all the|all your|a|a long|a big|a slow|a deep|some|one|another) )?(?:air|breath|exhale|inhale)";
const OUT =
  `exhal(?:e|es|ed|ing|ation)|empty(?:ing)? (?:the|your) lungs|breath(?:e|es|ing|s)?${SLOWLY} out|(?:blow|puff|huff|sigh|hiss|breath)(?:e|ing|s)?(?: it| ${AIR}| all)? out|` +
  `(?:push|press|squeeze|send|let|empty|take)(?:ing)? ${AIR} (?:out|go)|out breath|(?:air|breath) (?:goes |comes |flows )?out|(?:blow|puff|huff|sigh|hiss)(?:ing)?(?= (?:as|when|while|on) )`;
const IN =
  `inhal(?:e|es|ed|ing|ation)|fill(?:ing)? (?:the|your) lungs|breath(?:e|es|ing|s)?${SLOWLY} in|(?:suck|draw|sip|sniff|pull|take|let)(?:ing)? (?:in )?${AIR}(?: in)?(?! (?:out|go)\\b)|` +
  "(?:sniff|sip|suck)(?:ing)?(?: it| air)? in(?= (?:as|on|when|while|with|for) )|in breath|air (?:goes |comes |flows )?in";
/** "In as you lower": only the direction is said, at the head of a clause. */
const SHORT =
  "(?<=^|(?:\\band|\\bthen|\\bbut|\\bso|,) )(?:in|out)(?= (?:through (?:the |your )?(?:nose|mouth) )?(?:(?:as|on|when|while|with|for|going|coming|pushing|pressing|pulling|lifting|lowering|returning|sliding) |to (?:lift|lower|press|push|pull|open|close|return|curl|rise|row|bend|straighten|roll|extend|sink|stand)))";
const BREATH = new RegExp(`\\b(?:(?<out>${OUT})|(?<in>${IN})|(?<short>${SHORT}))(?![a-z])`, "g");
const BREATHS = spoken(BREATH);
const JOINS =
  "(?:is |goes |comes |belongs |happens )?(?:as|when|while|on|with|for)|belongs to|goes to|through|during|for|whenever|in|each time|every time|throughout";
const JOINED = new RegExp(`^${SLOWLY} (?:and )?(?:(?:${JOINS}) |(?=[a-z]+ing\\b))`);
/** "Inhale out, exhale in" names the halves; "exhale out" is one word too many for a breath. */
const CROSSED = { in: /^ (?:go |going )?out(?: |$)/, out: /^ (?:go |going )?in(?: |$)/ } as const;
/** "Exhale up, inhale down." */
const STRAIGHT = /^ (?<way>up|down|home)(?= |$)/;
/** "Inhale pull, exhale return." */
const BARE_MOTION =
  "(?=(?:pull|push|press|lift|lower|return|release|row|curl|tuck|reach|stretch|open|close|drive|extend|bend|lengthen|draw)(?:$| ,| and))";
const LOOSE = new RegExp(`^ (?:, (?:and )?|and |then |to |${BARE_MOTION})(?=[a-z])`);
const LOOSE_BEFORE = /[a-z] (?:, (?:and )?|and )$/;
const PHASE_FIRST =
  /(?:^|, |\b(?:and|then) )(?:as|when|while|on the|on your|for the|with the)\b[^,]*(?:, ?)?(?: ?(?:and|you|we|then))* ?$/;
const ON_THE_BREATH = /\b(?:on|with) (?:the|an|your|a|each|every) $/;

/** "Halfway through the press, breathe out" is a moment of its own. */
const PART_WAY = /\b(?:half|half ?way|through|before|after|until|between)\b/;

interface Half {
  readonly during: BreathClaim["during"];
  readonly isAfter: boolean;
  readonly length: number;
  readonly sure: boolean;
}

export function breathIn({ words }: Sentence): ClaimReading[] {
  if (!BREATHS.mayBeIn(words)) return [];
  const breaths = [...words.matchAll(BREATH)];
  return breaths.flatMap((found, n): ClaimReading[] => {
    const { index } = found;
    const end = index + found[0].length;
    const before = words.slice(breaths[n - 1] ? endOf(breaths[n - 1]) : 0, index);
    const after = words.slice(end, breaths[n + 1]?.index ?? words.length);
    const { out, short } = found.groups ?? {};
    const breath = out !== undefined || short === "out" ? "out" : "in";
    const half = crossed(breath, before, after, short) ?? halfAround(before, after);
    if (!half || isOfAnotherDay(before, words)) return [];
    const [from, to] = half.isAfter ? [index, end + half.length] : [index - half.length, end];
    const sure = half.sure && short === undefined;
    return [{ fact: { says: "breath", breath, during: half.during }, at: from, length: to - from, sure }];
  });
}

const endOf = (found: RegExpMatchArray | undefined): number => (found ? (found.index ?? 0) + found[0].length : 0);

function crossed(breath: "in" | "out", before: string, after: string, short: string | undefined): Half | undefined {
  const found = short === undefined && !ON_THE_BREATH.test(before) ? CROSSED[breath].exec(after) : null;
  if (!found) return undefined;
  return { during: breath === "in" ? "out" : "back", isAfter: true, length: found[0].trimEnd().length, sure: false };
}

/** The half of the repetition that stands with a breath: after it ("exhale as you push"), else before ("push, exhale"). */
function halfAround(before: string, after: string): Half | undefined {
  const way = STRAIGHT.exec(after)?.groups?.way;
  if (way === "home") return { during: "back", isAfter: true, length: way.length + 1, sure: false };
  if (way === "up" || way === "down") return { during: way, isAfter: true, length: way.length + 1, sure: false };
  const joined = JOINED.exec(after);
  if (joined) return halfIn(after, joined[0].length, { isAfter: true, sure: true });
  if (PHASE_FIRST.test(before)) return halfIn(before, 0, { isAfter: false, sure: true });
  if (ON_THE_BREATH.test(before)) return halfIn(before, 0, { isAfter: false, sure: true });
  const loose = LOOSE.exec(after);
  const then = loose ? halfIn(after, loose[0].length, { isAfter: true, sure: false }) : undefined;
  const first = LOOSE_BEFORE.test(before) ? halfIn(before, 0, { isAfter: false, sure: false }) : undefined;
  // "Push out, exhale, come back": the breath may belong to either.
  return then && first ? undefined : (then ?? first);
}

function halfIn(words: string, skip: number, how: Pick<Half, "isAfter" | "sure">): Half | undefined {
  const part = how.isAfter ? (words.slice(skip).split(",")[0] ?? "") : clauseBefore(words);
  const during = motionIn(part);
  if (during === undefined || (!how.sure && PART_WAY.test(part))) return undefined;
  const length = how.isAfter ? skip + part.trimEnd().length : words.length - words.indexOf(part);
  return { during, ...how, length };
}

/** The last clause with words in it: "long neck, on the way back," ends in "on the way back". */
function clauseBefore(words: string): string {
  const clauses = words.split(",").map((clause) => clause.replace(ON_THE_BREATH, ""));
  return (
    clauses.findLast((clause) => /[a-z]{2}/.test(clause.replace(/\b(?:and|then|you|we|the)\b/g, "")))?.trim() ?? ""
  );
}
