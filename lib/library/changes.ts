/**
 * What differs between two states of a move, fact by fact in words, and how two people's changes of one move are
 * merged.
 */

import { type Formats, STANDARD_FORMATS } from "#lib/formats/formats.ts";
import { distanceRange, forceRange } from "#lib/formats/units.ts";
import { tagWords } from "#lib/plan/format.ts";
import { sameData } from "#lib/plan/same-data.ts";
import type { Move } from "#lib/plan/schema.ts";
import { correctionIn, correctionWords } from "./correction-words.ts";
import {
  breathWords,
  cautionList,
  fromToWords,
  NO_NAMES,
  POSE_WORDS,
  RESISTANCE_WORDS,
  SIDES_WORDS,
  type SpringNames,
  STATION_WORDS,
  springLimitWords,
  tempoWords,
  weightWords,
} from "./move-words.ts";

export type MoveKey = keyof Move;

export interface MoveChange {
  readonly key: MoveKey;
  /** The fact's name on screens: "tempo". */
  readonly label: string;
  /** In words; "nothing" where it is not given. */
  readonly before: string;
  readonly after: string;
}

interface Fact {
  readonly label: string;
  say(move: Move, names: SpringNames): string;
}

const tags = (list: readonly string[] | undefined): string => (list ?? []).map(tagWords).join(", ");
const ways = (list: readonly string[] | undefined): string => (list ?? []).join(" / ");

/** In the order of the form. */
const FACTS: Readonly<Record<MoveKey, Fact>> = {
  name: { label: "name", say: (m) => m.name },
  station: { label: "station", say: (m) => STATION_WORDS[m.station] },
  position: { label: "position", say: (m) => tagWords(m.position) },
  facing: { label: "facing", say: (m) => m.facing },
  hands: { label: "hands", say: (m) => tagWords(m.hands) },
  feet: { label: "feet", say: (m) => tagWords(m.feet) },
  sides: { label: "sides", say: (m) => SIDES_WORDS[m.sides] },
  pattern: { label: "pattern", say: (m) => m.pattern },
  muscles: { label: "muscles", say: (m) => weightWords(m.muscles) },
  spine: { label: "spine", say: (m) => tags(m.spine) },
  resistance: { label: "resistance", say: (m) => RESISTANCE_WORDS[m.resistance] },
  loadN: { label: "load", say: (m) => (m.loadN ? forceRange(m.loadN, STANDARD_FORMATS) : "") },
  springs: { label: "springs", say: (m, names) => springLimitWords(m, names) },
  travelMm: { label: "travel", say: (m) => (m.travelMm ? distanceRange(m.travelMm, STANDARD_FORMATS) : "") },
  tempo: { label: "tempo", say: (m) => tempoWords(m) },
  exhaleOn: { label: "breath", say: (m) => breathWords(m) },
  seconds: { label: "time", say: (m) => (m.seconds ? `${fromToWords(m.seconds)} s` : "") },
  met: { label: "effort", say: (m) => (m.met === undefined ? "" : `${m.met} MET`) },
  cautions: { label: "asks for care", say: (m) => cautionList(m.cautions ?? []) },
  easier: { label: "easier", say: (m) => ways(m.easier) },
  harder: { label: "harder", say: (m) => ways(m.harder) },
  handsShare: { label: "hands' pose", say: (m) => (m.handsShare ? POSE_WORDS[m.handsShare.pose] : "") },
  figure: { label: "figure", say: correctionWords },
};
export const MOVE_KEYS = Object.keys(FACTS) as readonly MoveKey[]; // exactly the keys of the record above

export const factLabel = (key: MoveKey): string => FACTS[key].label;

/** Keys whose facts differ, in the order of the form. An empty list and a missing one are the same fact. */
export function changedKeys(before: Move, after: Move): MoveKey[] {
  return MOVE_KEYS.filter((key) => !sameFact(before[key], after[key]));
}

/** Empty exactly when the two have the same facts. */
export function moveChanges(before: Move, after: Move, names: SpringNames = NO_NAMES): MoveChange[] {
  return changedKeys(before, after).map((key) => {
    const { label, say } = FACTS[key];
    return { key, label, before: say(before, names) || "nothing", after: say(after, names) || "nothing" };
  });
}

/** A fact's words, which are the same for everybody, in a reader's units. */
export function factIn(key: MoveKey, words: string, f: Formats): string {
  if (key === "figure") return correctionIn(words, f);
  const [low, high] = (words.match(/\d+(?:\.\d+)?/g) ?? []).map(Number);
  if (low === undefined || (key !== "loadN" && key !== "travelMm")) return words;
  const range = [low, high ?? low] as const;
  return key === "loadN" ? forceRange(range, f) : distanceRange([range[0] * 10, range[1] * 10], f);
}

export interface Merged {
  /**
   * My move, with the facts that only the other person changed taken from theirs. Where both changed a fact, mine
   * stays.
   */
  readonly move: Move;
  /** Facts that only the other person changed. */
  readonly taken: readonly MoveKey[];
  /** Facts that both changed to different values: a person has to choose. */
  readonly both: readonly MoveKey[];
}

/** Both began from `base`. */
export function mergeMoves(base: Move, mine: Move, theirs: Move): Merged {
  const byThem = changedKeys(base, theirs);
  const byMe = new Set(changedKeys(base, mine));
  const taken = byThem.filter((key) => !byMe.has(key));
  const both = byThem.filter((key) => byMe.has(key) && !sameFact(mine[key], theirs[key]));
  return { move: withFacts(mine, theirs, taken), taken, both };
}

/** `move` with these facts replaced by those of `from`. */
export function withFacts(move: Move, from: Move, keys: readonly MoveKey[]): Move {
  const left = Object.entries(move).filter(([key]) => !keys.some((k) => k === key));
  const right = Object.entries(from).filter(([key]) => keys.some((k) => k === key));
  return Object.fromEntries([...left, ...right]) as Move; // every required key is in one of the two
}

function sameFact(a: unknown, b: unknown): boolean {
  return sameData(bare(a), bare(b));
}

/** An empty optional list or record is the same as a missing one. */
function bare(value: unknown): unknown {
  if (typeof value !== "object" || value === null) return value;
  if (Array.isArray(value)) return value.length === 0 ? undefined : value;
  const entries = Object.entries(value).flatMap(([key, part]) => {
    const inner = bare(part);
    return inner === undefined ? [] : [[key, inner] as const];
  });
  return entries.length === 0 ? undefined : Object.fromEntries(entries);
}
