/** The whole grammar, found by the word or class with which a match begins. */
import type { Draft, Production } from "./draft.ts";
import { OF_HANDS } from "./grammar-hands.ts";
import { OF_PLACE } from "./grammar-place.ts";
import { OF_SPRINGS } from "./grammar-springs.ts";
import { type Match, matchAt, startsOf } from "./pattern.ts";
import type { Unit } from "./units.ts";

const BY_START = byStart([...OF_HANDS, ...OF_PLACE, ...OF_SPRINGS]);

interface Entry {
  readonly production: Production;
  /** Place in the grammar. */
  readonly n: number;
}

function byStart(productions: readonly Production[]): Map<string, readonly Entry[]> {
  const all = new Map<string, Entry[]>();
  for (const [n, production] of productions.entries())
    for (const start of new Set(startsOf(production.pattern)))
      all.set(start, [...(all.get(start) ?? []), { production, n }]);
  return all;
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
  let best: (Entry & { readonly match: Match }) | null = null;
  for (const start of [unit.word, ...unit.classes.map((name) => `@${name}`)])
    for (const { production, n } of BY_START.get(start) ?? []) {
      if (production.only !== undefined && !isStart) continue;
      const match = matchAt(production.pattern, clause, at);
      if (!match || (best && (match.end < best.match.end || (match.end === best.match.end && n > best.n)))) continue;
      if (production.only === "whole" && !isRest(clause, match.end)) continue;
      best = { production, match, n };
    }
  return best && { drafts: best.production.drafts(best.match), end: best.match.end };
}

const isRest = (clause: readonly Unit[], end: number): boolean =>
  clause.slice(end).every(({ classes, word }) => classes.includes("fill") || word === "first");
