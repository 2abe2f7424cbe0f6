/** Finds moves of the library by any word of their name, muscles, position, pattern, station or side. */
import { tagWords } from "#lib/plan/format.ts";
import type { Move } from "#lib/plan/schema.ts";

export interface FoundMove {
  readonly id: string;
  readonly move: Move;
}

/** All words of the query have to begin a word of the move. Names that begin with the query come first, then by name. */
export function searchMoves(moves: Readonly<Record<string, Move>>, query: string): FoundMove[] {
  const wanted = words(query);
  const starts = query.trim().toLowerCase();
  const rank = (m: FoundMove) => (starts !== "" && m.move.name.toLowerCase().startsWith(starts) ? 0 : 1);
  return Object.entries(moves)
    .map(([id, move]) => ({ id, move }))
    .filter(({ move }) => {
      const has = words(everythingSaid(move));
      return wanted.every((w) => has.some((h) => h.startsWith(w)));
    })
    .sort((a, b) => rank(a) - rank(b) || a.move.name.localeCompare(b.move.name));
}

/** "push, kneeling on the carriage; chest, triceps": the line under a move's name. */
export function moveLine(move: Move): string {
  return `${move.pattern}, ${tagWords(move.position)}, ${move.station}; ${muscleWords(move)}`;
}

/** Prime movers first. */
export function muscleWords(move: Move): string {
  return Object.entries(move.muscles)
    .sort(([, a], [, b]) => b - a)
    .map(([group]) => tagWords(group))
    .join(", ");
}

function everythingSaid(move: Move): string {
  const sides = move.sides === "each" ? "each side left right" : move.sides;
  return [move.name, moveLine(move), sides, move.resistance, tagWords(move.facing), tagWords(move.hands)].join(" ");
}

const words = (text: string): string[] =>
  text
    .toLowerCase()
    .split(/[^\p{L}\p{N}]+/u)
    .filter(Boolean);
