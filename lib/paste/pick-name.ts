/**
 * Finds the stretch of a row that names its move: names in the library may contain commas, and notes may follow them.
 */

import type { NameIndex } from "../library/name-index.ts";
import type { FieldSegment, RowField } from "./field.ts";
import { bestScore, matchExact, matchMove } from "./match-move.ts";
import type { Match } from "./types.ts";

/** A stretch of one field. */
export interface NameStretch extends FieldSegment {
  readonly field: RowField;
}

export interface PickedName {
  readonly match: Match;
  readonly name: string;
  readonly stretches: readonly NameStretch[];
  readonly rest: readonly NameStretch[];
}

/** How many stretches are looked at; what follows is a note. */
const MOST = 7;
const STRENGTH: Readonly<Record<Match["how"], number>> = { same: 5, order: 4, spelling: 3, part: 2, near: 1, none: 0 };

/** Words that only join what was read, so dropping them loses nothing. */
const JOINING = /^(?:then|and|for|of|with|per|at|on|in|x|the|plus|by|w\/|\s|-)+$/i;

/** Removes joining words that stand alone from a field and returns what is left, stretch by stretch. */
export function nameStretches(field: RowField): NameStretch[] {
  const segments = field.segments();
  for (const { text, from, to } of segments) if (JOINING.test(text)) field.take(from, to, "passed-over");
  return segments.flatMap((segment) => (JOINING.test(segment.text) ? [] : [{ ...segment, field }]));
}

/**
 * The longest run of stretches that is a name in the library; else the run most like one, at the start or after a
 * meaningless first stretch; else the first stretch, as an unknown name.
 */
export function pickName(all: readonly NameStretch[], library: NameIndex): PickedName {
  const run = exactRun(all, library) ?? likelyRun(all, library);
  const stretches = all.slice(run.from, run.to);
  const rest = all.filter((_, i) => i < run.from || i >= run.to);
  return { match: run.match, name: textOf(stretches), stretches, rest };
}

interface Run {
  readonly from: number;
  readonly to: number;
  readonly match: Match;
}

/** The longest run with exactly the words of a name; the earlier of two. */
export function exactRun(all: readonly NameStretch[], library: NameIndex): Run | null {
  const most = Math.min(all.length, MOST);
  for (let length = most; length > 0; length--) {
    for (let from = 0; from + length <= most; from++) {
      const match = matchExact(textOf(all.slice(from, from + length)), library);
      if (match) return { from, to: from + length, match };
    }
  }
  return null;
}

function likelyRun(all: readonly NameStretch[], library: NameIndex): Run {
  const nothing: Run = { from: 0, to: Math.min(1, all.length), match: { how: "none", near: [] } };
  for (const from of [0, 1]) {
    const runs: Run[] = [];
    for (let to = from + 1; to <= Math.min(all.length, from + 3); to++) {
      runs.push({ from, to, match: matchMove(textOf(all.slice(from, to)), library) });
    }
    const [best] = runs.sort((a, b) => rank(b.match) - rank(a.match) || a.to - b.to);
    if (best && best.match.near.length > 0) return best;
  }
  return nothing;
}

const rank = (match: Match): number => STRENGTH[match.how] + bestScore(match);

const textOf = (stretches: readonly NameStretch[]): string => stretches.map((s) => s.text).join(" ");
