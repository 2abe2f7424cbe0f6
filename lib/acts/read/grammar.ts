/** The whole grammar, found by the word or class with which a match begins. */
import type { Draft, Production } from "./draft.ts";
import { OF_HANDS } from "./grammar-hands.ts";
import { OF_PLACE } from "./grammar-place.ts";
import { OF_SIDES } from "./grammar-sides.ts";
import { OF_SPRINGS } from "./grammar-springs.ts";
import { OF_STRAPS } from "./grammar-straps.ts";
import { matchEnd, startsOf } from "./pattern.ts";
import type { Unit } from "./units.ts";
import { AFTER_A_SPRING } from "./vocabulary.ts";

const BY_START = byStart([...OF_HANDS, ...OF_STRAPS, ...OF_PLACE, ...OF_SIDES, ...OF_SPRINGS]);

interface Entry {
  readonly production: Production;
  /** Place in the grammar. */
  readonly n: number;
}

function byStart(productions: readonly Production[]) {
  const words = new Map<string, Entry[]>();
  const classes = new Map<string, Entry[]>();
  for (const [n, production] of productions.entries())
    for (const start of new Set(startsOf(production.pattern))) {
      const [map, key] = start.startsWith("@") ? [classes, start.slice(1)] : [words, start];
      map.set(key, [...(map.get(key) ?? []), { production, n }]);
    }
  return { words, classes };
}

export interface Reading {
  readonly drafts: readonly Draft[];
  /** Index of the unit after it. */
  readonly end: number;
}

/** The longest reading of the words that begin at `at` in a clause; the one that comes first in the grammar wins a tie. */
export function readingAt(clause: readonly Unit[], at: number, isStart: boolean): Reading | null {
  const unit = clause[at];
  if (!unit) return null;
  let best: Entry | null = null;
  let longest = at;
  const look = (entries: readonly Entry[] | undefined): void => {
    for (const entry of entries ?? []) {
      const { only } = entry.production;
      if ((only === "start" || only === "whole") && !isStart) continue;
      const end = matchEnd(entry.production.pattern, clause, at);
      if (end < longest || end === at || (end === longest && best && entry.n > best.n)) continue;
      if (only === "whole" && !isRest(clause, end)) continue;
      if (only === "last" && !isLast(clause[end])) continue;
      best = entry;
      longest = end;
    }
  };
  look(BY_START.words.get(unit.word));
  for (const name of unit.classes) look(BY_START.classes.get(name));
  return best && readingOf(best, clause.slice(at, longest), longest);
}

const readingOf = ({ production }: Entry, units: readonly Unit[], end: number): Reading => ({
  drafts: production.drafts({ units }),
  end,
});

const isLast = (next: Unit | undefined): boolean =>
  next === undefined || next.classes.includes("fill") || AFTER_A_SPRING.has(next.word);

const isRest = (clause: readonly Unit[], end: number): boolean =>
  clause.slice(end).every(({ classes, word }) => classes.includes("fill") || word === "first");
