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

/** The index after the longest match that begins at `at`; -1 for none. Tried at every word, so nothing is built here. */
export const matchEnd = ({ elements }: Pattern, units: readonly Unit[], at: number): number =>
  endFrom(elements, 0, units, at, false);

function endFrom(elements: readonly Element[], n: number, units: readonly Unit[], at: number, begun: boolean): number {
  const element = elements[n];
  if (!element) return begun ? at : NONE;
  const best = element.optional || element.repeats ? endFrom(elements, n + 1, units, at, begun) : NONE;
  for (let i = at; i < units.length && i <= at + MOST_FILL; i++) {
    const unit = units[i];
    if (!unit || (begun && unit.gap > 0)) break;
    if (takes(element, unit)) {
      const end = endFrom(elements, element.repeats ? n : n + 1, units, i + 1, true);
      if (end > best) return end;
    }
    if (!begun || !unit.classes.includes("fill")) break;
  }
  return best;
}
