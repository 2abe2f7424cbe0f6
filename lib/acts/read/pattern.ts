/**
 * Patterns of the grammar over units. Elements stand apart by spaces: `word|word` are alternatives, `@class` is any word
 * of a class, `?` makes the element optional, `*` lets it repeat. Fill words between elements are passed over, punctuation
 * is not.
 */
import type { Unit } from "./units.ts";

interface Element {
  readonly words: readonly string[];
  readonly classes: readonly string[];
  readonly optional: boolean;
  readonly repeats: boolean;
}

export interface Pattern {
  readonly elements: readonly Element[];
}

/** The units that the elements took, in order; `end` is the index after the last. */
export interface Match {
  readonly units: readonly Unit[];
  readonly end: number;
}

export function patternOf(source: string): Pattern {
  return {
    elements: source.split(" ").map((part): Element => {
      const optional = part.endsWith("?");
      const repeats = part.endsWith("*");
      const names = (optional || repeats ? part.slice(0, -1) : part).split("|");
      return {
        words: names.filter((name) => !name.startsWith("@")),
        classes: names.filter((name) => name.startsWith("@")).map((name) => name.slice(1)),
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
    starts.push(...words, ...classes.map((name) => `@${name}`));
    if (!optional && !repeats) break;
  }
  return starts;
}

const takes = ({ words, classes }: Element, unit: Unit): boolean =>
  words.includes(unit.word) || classes.some((name) => unit.classes.includes(name));

const MOST_FILL = 5;

/** The longest match that begins at `at`. */
export function matchAt({ elements }: Pattern, units: readonly Unit[], at: number): Match | null {
  return step(elements, 0, units, at, []);
}

function step(
  elements: readonly Element[],
  n: number,
  units: readonly Unit[],
  at: number,
  taken: readonly Unit[],
): Match | null {
  const element = elements[n];
  if (!element) return { units: taken, end: at };
  const skip = element.optional || element.repeats ? step(elements, n + 1, units, at, taken) : null;
  for (let i = at, fill = 0; i < units.length && fill <= MOST_FILL; i++, fill++) {
    const unit = units[i];
    if (!unit || (taken.length > 0 && unit.gap > 0)) break;
    if (takes(element, unit)) {
      const found = step(elements, element.repeats ? n : n + 1, units, i + 1, [...taken, unit]);
      if (found && (!skip || found.end > skip.end)) return found;
    }
    if (taken.length === 0 || !unit.classes.includes("fill")) break;
  }
  return skip;
}
