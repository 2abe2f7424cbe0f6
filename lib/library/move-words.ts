/** A move's facts in words, for the library's pages, the form, the record of changes and the search. */

import { cycleSeconds } from "#lib/clock/clock.ts";
import type { Formats } from "#lib/formats/formats.ts";
import { forceRange } from "#lib/formats/units.ts";
import { NOISE } from "#lib/numbers/round.ts";
import { plainNumber, plural, tagWords } from "#lib/plan/format.ts";
import { GROUPS, type Move, type MoveCaution } from "#lib/plan/schema.ts";

export const CAUTION_WORDS: Readonly<Record<MoveCaution, string>> = {
  "wrist-load": "wrist load",
  kneeling: "kneeling",
  overhead: "arms overhead",
  "loaded-flexion": "bending forward under load",
  "loaded-rotation": "turning under load",
  supine: "lying on the back",
  prone: "lying face down",
  "head-down": "head below the hips",
  "long-hold": "a long hold",
  "unstable-carriage": "a carriage that moves easily",
  "single-leg-balance": "balance on one leg",
};

export const SIDES_WORDS: Readonly<Record<Move["sides"], string>> = {
  both: "both sides at once",
  each: "one side, then the other",
  alternating: "side to side",
};

export const RESISTANCE_WORDS: Readonly<Record<Move["resistance"], string>> = {
  springs: "against the springs",
  bodyweight: "body weight alone",
  assisted: "the springs help",
};

export const STATION_WORDS: Readonly<Record<Move["station"], string>> = {
  front: "at the front",
  carriage: "on the carriage",
  back: "at the back",
  floor: "on the floor",
};

export const POSE_WORDS: Readonly<Record<NonNullable<Move["handsShare"]>["pose"], string>> = {
  "high-plank": "high plank",
  "forearm-plank": "forearm plank",
  knees: "plank on the knees",
  "hands-raised": "plank, hands raised",
  "feet-raised": "plank, feet raised",
  "push-up-low": "push-up, lowest point",
};

/** Spring names by id, where the studio has one. */
export type SpringNames = ReadonlyMap<string, string>;
export const NO_NAMES: SpringNames = new Map();

/** Groups by descending weight. Prime movers weigh 1, helpers less; a weight of 0 trains nothing. */
export function muscleWords(move: Pick<Move, "muscles">): { readonly prime: string[]; readonly helpers: string[] } {
  const weighted = GROUPS.map((group) => ({ words: tagWords(group), weight: move.muscles[group] ?? 0 }));
  const prime = weighted.filter(({ weight }) => weight >= 1);
  const helpers = weighted.filter(({ weight }) => weight > 0 && weight < 1).sort((a, b) => b.weight - a.weight);
  return { prime: prime.map((m) => m.words), helpers: helpers.map((m) => m.words) };
}

/** "chest, triceps": prime movers first. */
export function muscleList(move: Pick<Move, "muscles">): string {
  const { prime, helpers } = muscleWords(move);
  return [...prime, ...helpers].join(", ");
}

/** "chest 1, triceps 0.5": for comparing two states of a move. */
export const weightWords = (muscles: Move["muscles"]): string =>
  GROUPS.flatMap((g) => (muscles[g] === undefined ? [] : [`${tagWords(g)} ${muscles[g]}`])).join(", ");

/** "push, kneeling on the carriage; chest, triceps": the line under a move's name. */
export const moveLine = (move: Move): string =>
  `${move.pattern}, ${tagWords(move.position)} ${STATION_WORDS[move.station]}; ${muscleList(move) || "no muscles named"}`;

/** "3 s out, hold 1 s, 2 s back: 6 s a repetition"; "held". */
export function tempoWords(move: Pick<Move, "tempo">): string {
  if ("holdSeconds" in move.tempo) return "held";
  const { outSeconds, outHoldSeconds = 0, backSeconds, backHoldSeconds = 0 } = move.tempo;
  const hold = (seconds: number) => (seconds > 0 ? `, hold ${plainNumber(seconds)} s` : "");
  const cycle = outSeconds + outHoldSeconds + backSeconds + backHoldSeconds;
  const ways = `${plainNumber(outSeconds)} s out${hold(outHoldSeconds)}, ${plainNumber(backSeconds)} s back${hold(backHoldSeconds)}`;
  return `${ways}: ${plainNumber(cycle)} s a repetition`;
}

/** Whole repetitions in the move's own seconds: "6 to 12 repetitions in 30 to 60 s"; empty for a hold or no range. */
export function repWords(move: Pick<Move, "tempo" | "seconds">): string {
  const cycle = cycleSeconds(move);
  if (!cycle || !move.seconds) return "";
  const [least, most] = move.seconds.map((seconds) => Math.floor(seconds / cycle + NOISE)) as [number, number];
  const reps = least === most ? plural(least, "repetition") : `${least} to ${plural(most, "repetition")}`;
  return `${reps} in ${fromToWords(move.seconds)} s`;
}

export const breathWords = (move: Pick<Move, "exhaleOn">): string => {
  if (move.exhaleOn === undefined) return "keeps flowing";
  return move.exhaleOn === "out" ? "out on the way out" : "out on the way back";
};

/** "10 to 160 N at mid-travel"; "body weight alone". */
export function loadWords(move: Pick<Move, "resistance" | "loadN">, f: Formats): string {
  if (move.resistance === "bodyweight") return RESISTANCE_WORDS.bodyweight;
  const range = move.loadN ? `${forceRange(move.loadN, f)} at mid-travel` : "no range given";
  return `${RESISTANCE_WORDS[move.resistance]}, ${range}`;
}

/** "at least 1 light; at most 2 light, no strong". Empty without limits. */
export function springLimitWords(move: Pick<Move, "springs">, names: SpringNames = NO_NAMES): string {
  const list = (counts: Readonly<Record<string, number>> = {}) =>
    Object.entries(counts).map(([id, n]) => `${n === 0 ? "no" : n} ${names.get(id) ?? id}`);
  const min = list(move.springs?.min);
  const max = list(move.springs?.max);
  return [min.length > 0 ? `at least ${min.join(", ")}` : "", max.length > 0 ? `at most ${max.join(", ")}` : ""]
    .filter(Boolean)
    .join("; ");
}

/** "30 to 60"; "30" when both are the same. */
export const fromToWords = ([from, to]: readonly [number, number]): string =>
  from === to ? plainNumber(from) : `${plainNumber(from)} to ${plainNumber(to)}`;

export const cautionList = (cautions: readonly MoveCaution[]): string =>
  cautions.map((tag) => CAUTION_WORDS[tag]).join(", ");

/** Shown wherever a move's effort is shown or typed. */
export const MET_NOTE =
  "A judgement: the Compendium of Physical Activities has no code for this move. A class's total is only as good as these judgements.";
