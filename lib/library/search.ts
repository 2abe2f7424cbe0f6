/**
 * The search over the library as words are typed, used by the library page and wherever a move is picked. Words and
 * choices together; all of them have to match. Fast enough for hundreds of moves at every key press.
 */
import { tagWords } from "#lib/plan/format.ts";
import { own } from "#lib/plan/lookup.ts";
import type { Group, Move, MoveCaution } from "#lib/plan/schema.ts";
import {
  CAUTION_WORDS,
  muscleList,
  NO_NAMES,
  RESISTANCE_WORDS,
  type SpringNames,
  STATION_WORDS,
} from "./move-words.ts";
import { type NameIndex, nameIndexOf } from "./name-index.ts";
import { rankMoves } from "./rank-moves.ts";

export interface FoundMove {
  readonly id: string;
  readonly move: Move;
}

/** What the move's springs must allow: none at all, that one may be on, or that one has to be. */
export type SpringChoice = "" | "bodyweight" | `takes ${string}` | `needs ${string}`;

export interface LibraryFilter {
  readonly text: string;
  readonly group: Group | "";
  readonly pattern: Move["pattern"] | "";
  readonly position: Move["position"] | "";
  readonly station: Move["station"] | "";
  readonly springs: SpringChoice;
  /** Only moves with this caution. */
  readonly asks: MoveCaution | "";
  /** Leave out moves with any of these cautions. */
  readonly without: readonly MoveCaution[];
}

export const NO_FILTER: LibraryFilter = {
  text: "",
  group: "",
  pattern: "",
  position: "",
  station: "",
  springs: "",
  asks: "",
  without: [],
};

/** The library prepared for searching, by name. Make it once for each library, not for each key press. */
export interface LibraryIndex {
  readonly entries: readonly FoundMove[];
  readonly words: NameIndex;
}

const byName = new Intl.Collator("en", { sensitivity: "base", numeric: true });

/** `leaveOut`: ids not to offer (moves taken out of the library). */
export function libraryIndex(
  moves: Readonly<Record<string, Move>>,
  names: SpringNames = NO_NAMES,
  leaveOut: readonly string[] = [],
): LibraryIndex {
  const gone = new Set(leaveOut);
  const entries = Object.entries(moves)
    .filter(([id]) => !gone.has(id))
    .map(([id, move]) => ({ id, move }))
    .sort((a, b) => byName.compare(a.move.name, b.move.name) || (a.id < b.id ? -1 : 1));
  const offered = Object.fromEntries(entries.map(({ id, move }) => [id, move]));
  return { entries, words: nameIndexOf(offered, (move) => everythingSaid(move, names)) };
}

/**
 * Moves that have every word typed in their name or facts, best first; where there are none, those that have them all
 * but for a typo or two. With nothing typed, all moves by name.
 */
export function findMoves(index: LibraryIndex, filter: LibraryFilter): FoundMove[] {
  const chosenOnes = index.entries.filter(({ move }) => chosen(move, filter));
  if (!/[\p{L}\p{N}]/u.test(filter.text)) return chosenOnes;
  const byId = new Map(chosenOnes.map((one) => [one.id, one]));
  const ranked = rankMoves(filter.text, index.words, true).filter(
    ({ tier, entry }) => tier !== "some" && byId.has(entry.id),
  );
  const spelt = ranked.filter(({ typo }) => !typo);
  return (spelt.length > 0 ? spelt : ranked).flatMap(({ entry }) => byId.get(entry.id) ?? []);
}

/** Searches by words alone. */
export const searchMoves = (moves: Readonly<Record<string, Move>>, text: string): FoundMove[] =>
  findMoves(libraryIndex(moves), { ...NO_FILTER, text });

function chosen(move: Move, filter: LibraryFilter): boolean {
  const { group, pattern, position, station, asks } = filter;
  if (group !== "" && (move.muscles[group] ?? 0) <= 0) return false;
  if (pattern !== "" && move.pattern !== pattern) return false;
  if (position !== "" && move.position !== position) return false;
  if (station !== "" && move.station !== station) return false;
  const cautions = move.cautions ?? [];
  if (asks !== "" && !cautions.includes(asks)) return false;
  if (filter.without.some((tag) => cautions.includes(tag))) return false;
  return springsAllow(move, filter.springs);
}

/** A move without limits allows any spring and needs none. */
function springsAllow(move: Pick<Move, "resistance" | "springs">, choice: SpringChoice): boolean {
  if (choice === "") return true;
  if (choice === "bodyweight") return move.resistance === "bodyweight";
  if (move.resistance === "bodyweight") return false;
  const id = choice.slice(choice.indexOf(" ") + 1);
  if (choice.startsWith("needs ")) return (own(move.springs?.min, id) ?? 0) > 0;
  return own(move.springs?.max, id) !== 0;
}

function everythingSaid(move: Move, names: SpringNames): string[] {
  const sides = move.sides === "each" ? "each side left right" : `${move.sides} sides`;
  const cautions = (move.cautions ?? []).map((tag) => `${tagWords(tag)} ${CAUTION_WORDS[tag]}`);
  const needed = Object.entries(move.springs?.min ?? {}).flatMap(([id, n]) => (n > 0 ? [id, names.get(id) ?? ""] : []));
  return [
    move.name,
    move.pattern,
    tagWords(move.position),
    STATION_WORDS[move.station],
    muscleList(move),
    sides,
    move.resistance,
    RESISTANCE_WORDS[move.resistance],
    `facing ${move.facing}`,
    tagWords(move.hands),
    tagWords(move.feet),
    "holdSeconds" in move.tempo ? "held" : "",
    ...cautions,
    ...needed,
  ];
}
