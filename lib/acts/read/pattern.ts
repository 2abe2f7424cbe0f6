/**
 * Patterns of the grammar over units. Elements stand apart by spaces: `word|word` are alternatives, `@class` is any word
 * of a class, `?` makes the element optional, `*` lets it repeat. Fill words between elements are passed over, punctuation
 * is not.
 */
import type { Unit } from "./units.ts";

interface Element {
  readonly words: ReadonlySet<string>;
  readonly classes: ReadonlySet<string>;
  readonly optional: boolean;
  readonly repeats: boolean;
}

export interface Pattern {
  readonly elements: readonly Element[];
}

/** The units of a match, fill words included. */
export interface Matched {
  readonly units: readonly Unit[];
}

export function patternOf(source: string): Pattern {
  return {
    elements: source.split(" ").map((part): Element => {
      const optional = part.endsWith("?");
      const repeats = part.endsWith("*");
      const names = (optional || repeats ? part.slice(0, -1) : part).split("|");
      return {
        words: new Set(names.filter((name) => !name.startsWith("@"))),
        classes: new Set(names.filter((name) => name.startsWith("@")).map((name) => name.slice(1))),
        optional,
        repeats,
      };
    }),
  };
}

/** The words and classes that a match can begin with. */
export function startsOf({ elements }: Pattern): string[] {
  const starts: string[] = [];
  for (const { words, classes, optional, repeats } of elements) {
    starts.push(...words, ...[...classes].map((name) => `@${name}`));
    if (!optional && !repeats) break;
  }
  return starts;
}

function takes({ words, classes }: Element, unit: Unit): boolean {
  if (words.has(unit.word)) return true;
  if (classes.size > 0) for (const name of unit.classes) if (classes.has(name)) return true;
  return false;
}

const MOST_FILL = 5;
const NONE = -1;

/** Units within which a match must end, which bounds the work for a line made to be slow, and elements of the longest pattern. */
const LONGEST_MATCH = 24;
const MOST_ELEMENTS = 32;

/**
 * Where the rest of a pattern ends, for each element and unit already tried from one begin. Without it, a word that both
 * repeats and may be passed over is tried in every combination, and a line of such words never ends. Kept between calls
 * because a pattern is tried at every word: `stamps` says from which try an entry is.
 */
const ends = new Int32Array(MOST_ELEMENTS * LONGEST_MATCH);
const stamps = new Int32Array(MOST_ELEMENTS * LONGEST_MATCH);
let stamp = 0;

/** The index after the longest match that begins at `at`; -1 for none. Tried at every word, so nothing is built here. */
export function matchEnd({ elements }: Pattern, units: readonly Unit[], at: number): number {
  stamp = stamp === 0x7fffffff ? 1 : stamp + 1;
  return firstFrom(elements, 0, { units, from: at });
}

interface Place {
  readonly units: readonly Unit[];
  /** Where the match begins. */
  readonly from: number;
}

/** Optional elements before the first word are left out one after the other. */
function firstFrom(elements: readonly Element[], n: number, place: Place): number {
  const element = elements[n];
  const unit = place.units[place.from];
  if (!element || !unit) return NONE;
  const without = element.optional || element.repeats ? firstFrom(elements, n + 1, place) : NONE;
  if (!takes(element, unit)) return without;
  const end = endFrom(elements, element.repeats ? n : n + 1, place, place.from + 1);
  return Math.max(end, without);
}

function endFrom(elements: readonly Element[], n: number, place: Place, at: number): number {
  if (n >= elements.length) return at;
  const depth = at - place.from;
  if (depth >= LONGEST_MATCH) return NONE;
  const cell = n * LONGEST_MATCH + depth;
  if (stamps[cell] === stamp) return ends[cell] ?? NONE;
  const end = tryFrom(elements, n, place, at);
  stamps[cell] = stamp;
  ends[cell] = end;
  return end;
}

function tryFrom(elements: readonly Element[], n: number, place: Place, at: number): number {
  const element = elements[n];
  if (!element) return at;
  const best = element.optional || element.repeats ? endFrom(elements, n + 1, place, at) : NONE;
  for (let i = at; i < place.units.length && i <= at + MOST_FILL; i++) {
    const unit = place.units[i];
    if (!unit || unit.gap > 0) break;
    if (takes(element, unit)) {
      const end = endFrom(elements, element.repeats ? n : n + 1, place, i + 1);
      if (end > best) return end;
    }
    if (!unit.classes.includes("fill")) break;
  }
  return best;
}
