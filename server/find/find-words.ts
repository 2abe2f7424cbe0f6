/**
 * What one person finds by words: plans that they may read, and moves of the library. Rights come first: the index is asked
 * about no other plan, so neither a title nor a number tells of one.
 */
import { lastSeq, readGeneration } from "#db/repos/doc-log-repo.ts";
import { FORMER_MEMBER, namesById } from "#db/repos/people-repo.ts";
import { listPlanRows, type PlanRow } from "#db/repos/plan-repo.ts";
import { listStudioRooms } from "#db/repos/room-repo.ts";
import type { FoundInIndex } from "#db/words/word-index.ts";
import type { FoundByWords, FoundInLibrary, FoundLine, FoundPlan } from "#lib/find/found.ts";
import { type FindableLine, LINE_PLACES } from "#lib/find/plan-lines.ts";
import {
  excerptAround,
  MOST_ASKED_LETTERS,
  type SoughtWord,
  soughtWords,
  TITLE_RANKS,
  textWords,
  titleRank,
} from "#lib/find/words.ts";
import { knownSprings, springNames } from "#lib/library/known-springs.ts";
import { moveLine } from "#lib/library/move-words.ts";
import { findMoves, type LibraryIndex, libraryIndex, NO_FILTER } from "#lib/library/search.ts";
import { planTitle } from "#lib/plan/plan-title.ts";
import { type Actor, can, canPlan, type Person } from "#lib/policy/can.ts";
import { formatDocName } from "#lib/protocol/messages.ts";
import { classFieldAddress, lineAddress } from "#lib/protocol/places.ts";
import { fail, NO_RIGHT, NOT_SIGNED_IN, ok, type Result } from "#server/base/result.ts";
import { planDoc } from "#server/context/live-documents.ts";
import type { Springline } from "#server/context/springline.ts";
import { type MoveLibrary, moveLibrary } from "#server/studio-data/move-library.ts";

type Finding = Pick<Springline, "db" | "words" | "checks">;

/** A dialog's worth. Our own choice. */
const MOST_PLANS = 8;
const MOST_LINES_EACH = 3;
/** Some of them may say the same. */
const LOOKED_AT_EACH = 12;
const MOST_MOVES = 6;

const TOO_LONG = fail(
  422,
  "too-long",
  `That is more than can be looked for at once. Ask with at most ${MOST_ASKED_LETTERS} letters.`,
);

/** Nothing for fewer than two letters. Errors: 401, 403 for devices, 422 for more than `MOST_ASKED_LETTERS`. */
export function findByWords(app: Finding, actor: Actor, text: string): Result<FoundByWords> {
  if (actor === null) return NOT_SIGNED_IN;
  if (actor.kind !== "person") return NO_RIGHT;
  if (text.length > MOST_ASKED_LETTERS) return TOO_LONG;
  const asked = soughtWords(text);
  return ok({ ...findPlans(app, actor, asked), ...findInLibrary(app, actor, asked, text) });
}

function findPlans(
  app: Finding,
  person: Person,
  asked: readonly SoughtWord[],
): Omit<FoundByWords, "moves" | "moreMoves"> {
  const all = listPlanRows(app.db);
  const rows = all.filter((row) => row.deletedAt === null && canPlan(person, "plan.read", row));
  const unread = readSoon(app, all, rows);
  if (asked.length === 0) return { plans: [], morePlans: 0, unread };
  const ids = rows.map(({ id }) => id);
  const found = inOrder(app.words.find(asked, ids), rows, asked);
  const shown = found.slice(0, MOST_PLANS);
  const shownIds = shown.map(({ row }) => row.id);
  const lines = app.words.linesWith(asked, shownIds, LOOKED_AT_EACH);
  const names = namesById(app.db);
  const plans = shown.map(({ row, count }): FoundPlan => {
    const { id, ownerId, state, archivedAt } = row;
    const { some, others } = worthShowing(lines.get(id) ?? []);
    const ownerName = ownerId === person.id ? null : (names.get(ownerId) ?? FORMER_MEMBER);
    const about = { id, href: `/plans/${id}`, title: planTitle(row.title), ownerName, state };
    const told = some.map((line) => shownLine(id, line, asked));
    return { ...about, archived: archivedAt !== null, lines: told, more: count - others - told.length };
  });
  return { plans, morePlans: found.length - shown.length, unread };
}

/** The title stands above, and what says the same as a line before (a move done left and right) tells nothing new. */
function worthShowing(lines: readonly FindableLine[]): { some: FindableLine[]; others: number } {
  const seen = new Set<string>();
  const own = lines.filter(({ place, text }) => {
    if (place === "title" || seen.has(text)) return false;
    seen.add(text);
    return true;
  });
  return { some: own.slice(0, MOST_LINES_EACH), others: lines.length - own.length };
}

interface Ranked extends FoundInIndex {
  readonly row: PlanRow;
  readonly exact: boolean;
  readonly begins: boolean;
}

/**
 * First the title that was asked for. Then those on the desk before archived ones: titles that begin so, then by the place that
 * says most, the last changed first.
 */
function inOrder(found: readonly FoundInIndex[], rows: readonly PlanRow[], asked: readonly SoughtWord[]): Ranked[] {
  const byId = new Map(found.map((one) => [one.planId, one]));
  const ranked = rows.flatMap((row): Ranked[] => {
    const one = byId.get(row.id);
    if (!one) return [];
    const rank = titleRank(textWords(planTitle(row.title)), asked);
    return [{ ...one, row, exact: rank === TITLE_RANKS.exact, begins: rank <= TITLE_RANKS.begins }];
  });
  const rankOf = ({ place }: Ranked) => (place === null ? LINE_PLACES.length : LINE_PLACES.indexOf(place));
  const archived = ({ row }: Ranked) => Number(row.archivedAt !== null);
  return ranked.sort(
    (a, b) =>
      Number(b.exact) - Number(a.exact) ||
      archived(a) - archived(b) ||
      Number(b.begins) - Number(a.begins) ||
      rankOf(a) - rankOf(b),
  );
}

function shownLine(planId: string, line: FindableLine, asked: readonly SoughtWord[]): FoundLine {
  const { place, text } = line;
  return { place, text: excerptAround(text, asked), href: `/plans/${planId}${addressIn(line)}` };
}

function addressIn({ place, itemId, line }: FindableLine): string {
  if (itemId !== null) return lineAddress(itemId, place === "said" ? line : null);
  return place === "theme" || place === "notes" ? classFieldAddress(place, line) : "";
}

/** Plans that were asked to be read, up to which row: one that cannot be read is not asked for with every key. */
const asking = new WeakMap<Finding["words"], Map<string, number>>();

/**
 * Has plans read that were written in since the index last heard of them, or never read. FindAnswers how many were never read;
 * forgets plans that are gone.
 */
function readSoon(app: Finding, all: readonly PlanRow[], rows: readonly PlanRow[]): number {
  const known = app.words.readUpTo();
  const there = new Set(all.map(({ id }) => id));
  for (const id of known.keys()) if (!there.has(id)) app.words.drop(id);
  const asked = asking.get(app.words) ?? new Map<string, number>();
  asking.set(app.words, asked);
  for (const { id } of rows) {
    const name = formatDocName(planDoc(id));
    const [upTo, seq] = [known.get(id), lastSeq(app.db, name)];
    if (upTo?.seq === seq && upTo.generation === readGeneration(app.db, name)) continue;
    if (asked.get(id) === seq) continue;
    asked.set(id, seq);
    app.checks.soon(id);
  }
  return rows.filter(({ id }) => !known.has(id)).length;
}

/** Prepared once a library and its springs' names: the moves are the same object until the library changes. */
const prepared = new WeakMap<MoveLibrary["moves"], { readonly springs: string; readonly index: LibraryIndex }>();

function libraryOf(db: Springline["db"]): { readonly index: LibraryIndex; readonly gone: ReadonlySet<string> } {
  const { moves, archived } = moveLibrary(db);
  const names = springNames(knownSprings(listStudioRooms(db)));
  const springs = JSON.stringify([...names]);
  const known = prepared.get(moves);
  const index = known?.springs === springs ? known.index : libraryIndex(moves, names);
  prepared.set(moves, { springs, index });
  return { index, gone: new Set(archived) };
}

function findInLibrary(
  { db }: Pick<Springline, "db">,
  person: Person,
  asked: readonly SoughtWord[],
  text: string,
): Pick<FoundByWords, "moves" | "moreMoves"> {
  if (asked.length === 0 || !can(person, "library.read")) return { moves: [], moreMoves: 0 };
  const { index, gone } = libraryOf(db);
  const found = findMoves(index, { ...NO_FILTER, text });
  const rankOf = ({ move }: (typeof found)[number]) => {
    const rank = titleRank(textWords(move.name), asked);
    return rank > TITLE_RANKS.begins ? TITLE_RANKS.all : rank;
  };
  const inUse = found.toSorted((a, b) => Number(gone.has(a.id)) - Number(gone.has(b.id)) || rankOf(a) - rankOf(b));
  const shown = inUse.slice(0, MOST_MOVES).map(
    ({ id, move }): FoundInLibrary => ({
      ...{ href: `/library/${id}`, name: move.name, line: moveLine(move), archived: gone.has(id) },
    }),
  );
  return { moves: shown, moreMoves: found.length - shown.length };
}
