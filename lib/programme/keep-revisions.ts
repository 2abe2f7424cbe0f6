/**
 * What a calendar feed needs to know of changes: how often a class was changed in what its readers plan by, when, and who and
 * which room had it before. The server notes it, in the order in which it takes the changes of all pages, undo and changes of
 * the pattern included. So nothing is counted twice, and no number ever goes back: pages that were offline cannot bring an older one.
 */
import * as Y from "yjs";
import type { MonthSlot } from "#lib/month/types.ts";
import { own } from "#lib/plan/lookup.ts";
import { monthParts } from "./layout.ts";
import type { MonthState } from "./month-reader.ts";
import { monthClasses, readerOfMonth } from "./read.ts";
import { MONTH_STAMP, nextNumber, type Revision, THEME_STAMP } from "./revisions.ts";

/** What the server knows when a change arrives. */
export interface Now {
  /** ms since the epoch. */
  readonly at: number;
  /** When the month was last signed off; null for never. */
  readonly signedAt: number | null;
}

/** What the server knows, with the last day of which calendars tell as it stands, 'YYYY-MM-DD'. */
export interface NowNear extends Now {
  readonly nearUntil: string;
}

const DAY_MS = 86_400_000;

/** Whether people may have been told: it has stood for a day, or was there when the month was signed. */
export const mayBeTold = (since: number, { at, signedAt }: Now): boolean =>
  at - since >= DAY_MS || (signedAt !== null && signedAt >= since);

/**
 * Watches a document on the server. Calling the result notes the changes since the last call, in one transaction. Reads the
 * month only after a change that may concern a class, and writes nothing while only a note is typed within one second.
 */
export function keepRevisions(doc: Y.Doc, now: (month: string) => NowNear): () => void {
  const p = monthParts(doc);
  const reader = readerOfMonth(doc);
  let seen = reader.read();
  let dirty = false;
  const watched = [p.title, p.head, p.holidays, p.regulars, p.themes, p.coaches, p.lines, p.slots, p.changed];
  let typed = false;
  // Letters in a note concern no calendar. Those in the name of a theme do.
  const note = (events: readonly Y.YEvent<Y.AbstractType<unknown>>[]) => {
    for (const { target } of events)
      if (target instanceof Y.Text && target.parent?.parent !== p.themes) typed = true;
      else dirty = true;
  };
  for (const type of watched as readonly Y.AbstractType<unknown>[]) type.observeDeep(note);
  return () => {
    if (!dirty && !typed) return;
    typed = false;
    if (dirty) {
      const next = reader.read();
      doc.transact(() => noteRevisions(p.revisions, seen, next, now(next.month)), "revisions");
    } else stampMonth(doc, p.revisions, now(seen.month).at);
    seen = reader.read();
    dirty = false;
  };
}

function stampMonth(doc: Y.Doc, map: Y.Map<unknown>, now: number): void {
  const at = second(now);
  if (Number(map.get(MONTH_STAMP) ?? 0) < at) doc.transact(() => map.set(MONTH_STAMP, at), "revisions");
}

/** To the second, as the month file has it. */
const second = (at: number): number => Math.floor(at / 1000) * 1000;

function noteRevisions(map: Y.Map<unknown>, was: MonthState, is: MonthState, now: NowNear): void {
  const at = second(now.at);
  for (const [key, revision] of changesBetween(was, is, { ...now, at })) map.set(key, revision);
  if (was.revisions.month === is.revisions.month && is.revisions.month < at) map.set(MONTH_STAMP, at);
}

/** Revisions of classes, and stamps of themes, that a change of the month asks for. */
function changesBetween(was: MonthState, is: MonthState, now: NowNear): Map<string, Revision | number> {
  const found = new Map<string, Revision | number>();
  if (was.themes !== is.themes)
    for (const [id, { name }] of Object.entries(is.themes)) {
      const before = own(was.themes, id);
      if (before && before.name !== name && (own(is.revisions.themes, id) ?? 0) < now.at)
        found.set(THEME_STAMP + id, now.at);
    }
  const [before, after] = [monthClasses(was), monthClasses(is)];
  if (before === after) return found;
  const old = new Map(before.map((slot) => [slot.id, slot]));
  const listed = new Set(is.slots.map(({ id }) => id));
  for (const slot of after) {
    // An import has said it itself.
    if (own(was.revisions.slots, slot.id) !== own(is.revisions.slots, slot.id)) continue;
    const earlier = old.get(slot.id);
    const revision = revised(earlier, slot, is, now, listed.has(slot.id));
    if (revision) found.set(slot.id, markNear(revision, [earlier, slot], now));
  }
  for (const [id, revision] of vanished(before, after, is, now)) found.set(id, revision);
  return found;
}

/** A class that leaves a signed month, by a holiday or another rule of its line: calendars tell it as called off. */
function vanished(
  before: readonly MonthSlot[],
  after: readonly MonthSlot[],
  { revisions }: MonthState,
  now: NowNear,
): [string, Revision][] {
  if (now.signedAt === null) return [];
  const there = new Set(after.map(({ id }) => id));
  return before
    .filter(({ id }) => !there.has(id))
    .map((was) => {
      const last = own(revisions.slots, was.id) ?? { n: 0, at: 0 };
      const gone = { ...last, n: nextNumber(last.n), at: Math.max(last.at, now.at) };
      return [was.id, markNear(gone, [was], now)];
    });
}

/** A class that is told as it stands on a near day stays told so when it is moved away again: its number must not fall. */
export function markNear(
  revision: Revision,
  places: readonly (Pick<MonthSlot, "date"> | undefined)[],
  { nearUntil }: Pick<NowNear, "nearUntil">,
): Revision {
  return places.some((place) => place && place.date <= nearUntil) ? { ...revision, near: revision.n } : revision;
}

const PLANNED_BY = ["date", "start", "minutes", "room", "coach"] as const;

function revised(
  was: MonthSlot | undefined,
  is: MonthSlot,
  state: MonthState,
  now: Now,
  listed: boolean,
): Revision | undefined {
  const last = own(state.revisions.slots, is.id) ?? { n: 0, at: 0 };
  if (was === is) return undefined;
  // Another one that the pattern gives says nothing of its own; what was put back goes on with its number.
  if (was === undefined)
    return listed || last.at > 0
      ? { ...last, n: last.at > 0 ? nextNumber(last.n) : 0, at: Math.max(last.at, now.at) }
      : undefined;
  const planned = PLANNED_BY.some((key) => !same(was[key], is[key])) || (was.out ?? false) !== (is.out ?? false);
  const shown = planned || !same(was.theme, is.theme) || !same(was.plan, is.plan);
  if (!shown) return undefined;
  const made = own(state.made, is.id) ?? own(state.made, lineIdOf(is.id)) ?? 0;
  return {
    ...last,
    ...handedOn(was, is, last, made, now),
    n: planned ? nextNumber(last.n) : last.n,
    at: Math.max(last.at, now.at),
  };
}

const same = (a: unknown, b: unknown): boolean => (a ?? null) === (b ?? null);
const lineIdOf = (id: string): string => id.slice(0, -9);

/** Who and which room had it before, as far as anybody can have been told. */
function handedOn(was: MonthSlot, is: MonthSlot, last: Revision, made: number, now: Now): Partial<Revision> {
  const coach = same(was.coach, is.coach)
    ? {}
    : {
        coachSince: now.at,
        formerCoaches: former(last.formerCoaches, was.coach, is.coach, mayBeTold(last.coachSince ?? made, now)),
      };
  const room = same(was.room, is.room)
    ? {}
    : {
        roomSince: now.at,
        formerRooms: former(last.formerRooms, was.room, is.room, mayBeTold(last.roomSince ?? made, now)),
      };
  return { ...coach, ...room };
}

function former(
  list: readonly string[] | undefined,
  was: string | null | undefined,
  is: string | null | undefined,
  told: boolean,
): readonly string[] {
  const all = told && typeof was === "string" ? [...(list ?? []), was] : (list ?? []);
  return [...new Set(all)].filter((id) => id !== is);
}
