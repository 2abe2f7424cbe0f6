/**
 * What a cue line claims about the plan: time, halfway, last, first, side, what is next, springs, rounds, repetitions, breath.
 * It knows the phrases that coaches use for these and ignores everything else, since a false alarm costs more trust than a
 * missed claim.
 */
import { perValue } from "#lib/memo/per-value.ts";
import type { ScriptLine } from "#lib/plan/schema.ts";
import { breathIn } from "./breath.ts";
import { followingIn } from "./following.ts";
import { halfwayIn } from "./halfway.ts";
import { mayClaim } from "./may-claim.ts";
import { nextIn } from "./next.ts";
import { partsIn } from "./parts.ts";
import { repsIn } from "./reps.ts";
import { roundsIn } from "./rounds.ts";
import { charsOf, type Sentence, type SpokenClause, sentencesOf, spokenClausesOf } from "./sentences.ts";
import { sidesIn } from "./sides.ts";
import { springsIn } from "./springs.ts";
import { timeIn } from "./time.ts";
import type { Claim, ClaimReading } from "./types.ts";

const OF_CLAUSE: readonly ((clause: SpokenClause) => ClaimReading[])[] = [
  timeIn,
  halfwayIn,
  partsIn,
  sidesIn,
  roundsIn,
  followingIn,
  repsIn,
  springsIn,
];
const OF_SENTENCE: readonly ((sentence: Sentence) => ClaimReading[])[] = [nextIn, breathIn];

/** No line that is said claims as many things; a line made to be slow could keep others waiting. */
const MOST_CLAIMS = 12;

/** The claims in a text, the first dozen or so. A live field claims nothing, since the plan fills it in. */
export function claimsIn(text: string): readonly Claim[] {
  const claims: Claim[] = [];
  if (!mayClaim(text)) return claims;
  for (const sentence of sentencesOf(text)) {
    claims.push(...claimsOfSentence(text, sentence));
    if (claims.length >= MOST_CLAIMS) break;
  }
  return claims;
}

/** The claims of a line, worked out once per line. */
export const claimsOf = perValue(({ text }: ScriptLine): readonly Claim[] => claimsIn(text));

function claimsOfSentence(text: string, sentence: Sentence): Claim[] {
  const clauses = spokenClausesOf(sentence);
  const readings = [
    ...OF_CLAUSE.flatMap((read) => clauses.flatMap(read)),
    ...OF_SENTENCE.flatMap((read) => read(sentence)),
  ];
  return readings.map(({ fact, at, length, sure = true }): Claim => {
    const { from, to } = charsOf(sentence, at, length);
    return { ...fact, sure, from, to, said: text.slice(from, to) };
  });
}
