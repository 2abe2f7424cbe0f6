/**
 * What a move leaves out or contradicts: allowed, but shown to whoever edits it, with what will not work because of it.
 * Where a rule looks for the same thing its id is given.
 */

import { cycleSeconds } from "#lib/clock/clock.ts";
import type { Formats } from "#lib/formats/formats.ts";
import { distanceWords } from "#lib/formats/units.ts";
import { NOISE } from "#lib/numbers/round.ts";
import { plainNumber, tagWords } from "#lib/plan/format.ts";
import { own } from "#lib/plan/lookup.ts";
import type { Move, MoveCaution } from "#lib/plan/schema.ts";
import type { MoveKey } from "./changes.ts";
import { knownSprings, type RoomMachines } from "./known-springs.ts";
import { CAUTION_WORDS } from "./move-words.ts";

export interface MoveDoubt {
  readonly key: MoveKey;
  readonly say: string;
  /** Id of the rule that looks for this in a class. */
  readonly rule?: string;
}

/** Postures that need care by themselves (common practice, no source). */
const POSTURE: Readonly<Partial<Record<Move["position"], MoveCaution>>> = {
  quadruped: "kneeling",
  kneeling: "kneeling",
  supine: "supine",
  prone: "prone",
  inverted: "head-down",
};
/** Grips that bear on the wrist when the hands carry the body (common practice, no source). */
const FLAT_HANDS: readonly Move["hands"][] = ["front-platform", "back-platform", "carriage"];
const ON_HANDS: readonly Move["position"][] = ["plank", "quadruped", "inverted"];

/** In the order of the form. `rooms`: all rooms of the studio, possibly none. */
export function moveDoubts(move: Move, rooms: readonly RoomMachines[], f: Formats): MoveDoubt[] {
  return [...muscles(move), ...load(move, rooms), ...travel(move, rooms, f), ...time(move), ...care(move)];
}

function* muscles({ muscles }: Move): Iterable<MoveDoubt> {
  const weights = Object.values(muscles);
  if (!weights.some((weight) => weight > 0)) {
    yield {
      key: "muscles",
      say: "No muscle is given, so the balance of a class leaves this move out.",
      rule: "unknown-move-data",
    };
  } else if (!weights.some((weight) => weight >= 0.5)) {
    yield { key: "muscles", say: "No muscle weighs 0.5 or more, so this move never counts as work on one group." };
  }
}

function* load(move: Move, allRooms: readonly RoomMachines[]): Iterable<MoveDoubt> {
  const limits = move.springs ?? {};
  const named = [...Object.keys(limits.min ?? {}), ...Object.keys(limits.max ?? {})];
  if (move.resistance === "bodyweight") {
    if (move.loadN || named.length > 0) {
      yield {
        key: "springs",
        say: "It is done with body weight alone, so its load and springs are ignored.",
      };
    }
    return;
  }
  if (!move.loadN)
    yield { key: "loadN", say: "No load range is given, so nothing can tell whether a choice of springs fits." };
  if (named.length === 0) {
    const say = "No spring has a least or most, so any springs pass.";
    yield { key: "springs", say, rule: "springs-out-of-range" };
  }
  for (const { id, label, rooms, most } of knownSprings(allRooms, move)) {
    if (!named.includes(id)) continue;
    const least = own(limits.min, id) ?? 0;
    if (rooms.length === 0)
      yield { key: "springs", say: `No room has a spring called “${label}”, so its limit has no effect.` };
    else if (least > most) {
      yield {
        key: "springs",
        say: `It needs ${least} ${label}, but no machine has more than ${most}.`,
        rule: "springs-not-there",
      };
    }
  }
}

function* travel({ travelMm, resistance }: Move, rooms: readonly RoomMachines[], f: Formats): Iterable<MoveDoubt> {
  const shortest = Math.min(...rooms.map(({ equipment }) => equipment.carriageTravelMm));
  if (travelMm && travelMm[1] > shortest) {
    yield {
      key: "travelMm",
      say: `The travel goes to ${distanceWords(travelMm[1], f, true)}, but the shortest carriage in your rooms has ${distanceWords(shortest, f, true)}.`,
    };
  }
  if (!travelMm && resistance !== "bodyweight") {
    yield { key: "travelMm", say: "No travel is given, so force and work are worked out over half the carriage's." };
  }
}

function* time(move: Move): Iterable<MoveDoubt> {
  const cycle = cycleSeconds(move);
  if (cycle !== null && move.exhaleOn === undefined) {
    yield { key: "exhaleOn", say: "No breath is given, so nobody is told when to breathe out." };
  }
  if (!move.seconds) {
    yield {
      key: "seconds",
      say: "No shortest and longest time is given, so fitting a class uses half to one and a half times the planned time.",
    };
  } else if (
    cycle !== null &&
    Math.floor(move.seconds[1] / cycle + NOISE) <= Math.floor((move.seconds[0] - NOISE) / cycle)
  ) {
    const say = `No whole number of repetitions of ${plainNumber(cycle)} s fits its time.`;
    yield { key: "seconds", say, rule: "partial-rep" };
  }
  if (move.met === undefined)
    yield { key: "met", say: "No effort is given, so the intensity of a class leaves this move out." };
}

function* care(move: Move): Iterable<MoveDoubt> {
  const cautions = move.cautions ?? [];
  const posture = POSTURE[move.position];
  if (posture && !cautions.includes(posture)) yield unmarked(move, posture);
  const onHands = ON_HANDS.includes(move.position) && FLAT_HANDS.includes(move.hands);
  if (onHands && !cautions.includes("wrist-load")) yield unmarked(move, "wrist-load");
  if (cautions.length > 0 && !move.easier?.length) {
    const say = "It needs care, but no easier way is given for a coach to offer.";
    yield { key: "easier", say, rule: "caution-without-easier" };
  }
  if (onHands && !move.handsShare) {
    yield { key: "handsShare", say: "No pose is given for the hands, so the wrist load is not worked out." };
  }
}

function unmarked({ position }: Move, caution: MoveCaution): MoveDoubt {
  const say = `It is done ${tagWords(position)} and “${CAUTION_WORDS[caution]}” is not marked, so people who must avoid that are not warned.`;
  return { key: "cautions", say, rule: "expected-caution-unanswered" };
}
