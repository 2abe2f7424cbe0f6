/**
 * Which way the breath goes when: "exhale as you push out", "on the way back, breathe in". "Breathe all the way in" is about
 * the breath alone.
 */
import { isDenied } from "./not-told.ts";
import type { Sentence } from "./sentences.ts";
import type { BreathClaim, Reading } from "./types.ts";

const OUT = "exhal(?:e|es|ing)|breath(?:e|es|ing|s)? (?:it )?out|blow(?:ing)? (?:it |the air )?out|(?:out breath)";
const IN = "inhal(?:e|es|ing)|breath(?:e|es|ing|s)? in|in breath";
/** "... and in on the way back", after a breath that was named in full. */
const AGAIN = "(?<=\\b(?:and|then|,) )(?:in|out)(?= (?:as|on the way|when|while|on your way) )";
const BREATH = new RegExp(`\\b(?:(?<out>${OUT})|(?<in>${IN})|(?<again>${AGAIN}))\\b`, "g");
const JOINED =
  /^ (?:again |slowly |strongly |fully |hard |all the way |long |gently )*(?:as|when|while|on|with|through|during|for|whenever) /;
const LOOSE = /^ (?:, (?:and )?|and |then |to )(?=[a-z])/;
const LOOSE_BEFORE = /[a-z] (?:, (?:and )?|and )$/;
const PHASE_FIRST = /(?:^|, |\b(?:and|then) )(?:as|when|while|on the way|on your way)\b[^,]*(?:,| and| you| we)? ?$/;
const ON_THE_BREATH = /\b(?:on|with) (?:the|an|your|a|each|every) $/;

/** How people name the two halves of a repetition. */
const DURING: readonly (readonly [BreathClaim["during"], RegExp])[] = [
  [
    "back",
    /\b(?:way (?:back|in|home)|com(?:e|es|ing) (?:back|home|in)|return(?:s|ing)?|(?:bring|brings|bringing|let|lets|letting|roll|rolls|rolling|carriage|go|goes|going|resist|resisting|slide|slides|glide|glides)(?: (?:it|them|the|carriage|handles|slowly|gently|rolls?|goes|comes|slides?|go|come|all|way))* (?:back|home|in)\b|releas(?:e|es|ing)|clos(?:e|es|ing) the carriage|carriage closes)\b/,
  ],
  [
    "out",
    /\b(?:way out|(?:push|press|slid|slide|reach|go|goes|going|send|drive|pull|draw|extend|glide|roll|move)(?:es|s|ing)?(?: (?:it|them|the|carriage|handles|your|arms|legs|slowly|all|way))* (?:out|away)\b|carriage (?:goes|moves|slides|rolls|travels) (?:out|away)|open(?:s|ing)? the carriage)\b/,
  ],
  ["push", /^(?:you |we )?(?:push|press)(?:es|ing)?$/],
  ["pull", /^(?:you |we )?(?:pull|row|draw)(?:s|ing)?$/],
];

export function breathIn({ words }: Sentence): Reading[] {
  const breaths = [...words.matchAll(BREATH)];
  return breaths.flatMap((found, n): Reading[] => {
    const { index } = found;
    const end = index + found[0].length;
    const before = words.slice(breaths[n - 1] ? endOf(breaths[n - 1]) : 0, index);
    const after = words.slice(end, breaths[n + 1]?.index ?? words.length);
    const phase = phaseAround(before, after);
    if (!phase || isDenied(before, words) || (found.groups?.again !== undefined && n === 0)) return [];
    const breath = (found.groups?.out ?? (found[0] === "out" ? "out" : undefined)) === undefined ? "in" : "out";
    const [from, to] = phase.isAfter ? [index, end + phase.length] : [index - phase.length, end];
    return [{ fact: { says: "breath", breath, during: phase.during }, at: from, length: to - from, sure: phase.sure }];
  });
}

const endOf = (found: RegExpMatchArray | undefined): number => (found ? (found.index ?? 0) + found[0].length : 0);

interface Phase {
  readonly during: BreathClaim["during"];
  readonly isAfter: boolean;
  readonly length: number;
  readonly sure: boolean;
}

/** The half of the repetition that stands with a breath: after it ("exhale as you push"), else before ("push, exhale"). */
function phaseAround(before: string, after: string): Phase | undefined {
  const joined = JOINED.exec(after);
  if (joined) return phaseIn(after, joined[0].length, { isAfter: true, sure: true });
  if (PHASE_FIRST.test(before)) return phaseIn(before, 0, { isAfter: false, sure: true });
  if (ON_THE_BREATH.test(before)) return phaseIn(before, 0, { isAfter: false, sure: true });
  const loose = LOOSE.exec(after);
  const then = loose ? phaseIn(after, loose[0].length, { isAfter: true, sure: false }) : undefined;
  const first = LOOSE_BEFORE.test(before) ? phaseIn(before, 0, { isAfter: false, sure: false }) : undefined;
  // "Push out, exhale, come back": the breath may belong to either.
  return then && first ? undefined : (then ?? first);
}

function phaseIn(words: string, skip: number, how: Pick<Phase, "isAfter" | "sure">): Phase | undefined {
  const part = how.isAfter ? (words.slice(skip).split(",")[0] ?? "") : words;
  const plain = part
    .replace(/^.*\b(?:as|when|while)\b/, "")
    .replace(ON_THE_BREATH, "")
    .replace(/[, ]+$|^[, ]+|\b(?:and|then|the|a)$/g, "")
    .replace(/^(?:and |then |the |on the |on |to )+/, "")
    .trim();
  const known = DURING.filter(([, pattern]) => pattern.test(how.isAfter ? part.trim() : part) || pattern.test(plain));
  const [only, other] = known;
  if (!only || other) return undefined;
  return { during: only[0], ...how, length: how.isAfter ? skip + part.trimEnd().length : part.trimStart().length };
}
