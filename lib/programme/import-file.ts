/**
 * Takes a month file into a month's document: into an empty one, or in the place of what is there. Whatever anybody can have been
 * told of and is not in the file stays as called off.
 */
import type * as Y from "yjs";
import type { ById, MonthFile, MonthSlot } from "#lib/month/types.ts";
import { own } from "#lib/plan/lookup.ts";
import { carriedKey, EARLIER } from "./carried.ts";
import { setEntry, slotEntry } from "./entries.ts";
import { markNear, mayBeTold, type NowNear } from "./keep-revisions.ts";
import { type MonthDocParts, monthParts, occurrenceOf } from "./layout.ts";
import type { MonthState } from "./month-reader.ts";
import { monthClasses, readMonthState } from "./read.ts";
import type { CoachTimes } from "./read-lists.ts";
import { MONTH_STAMP, nextNumber, type Revision, revisionOf } from "./revisions.ts";
import { clearContent, type MonthContent, writeContent } from "./write-content.ts";

/** Whether the studio has a room, a coach, a plan of that id: what it does not have is kept with the month. */
export interface StudioHas {
  readonly room: (id: string) => boolean;
  readonly coach: (id: string) => boolean;
  readonly plan: (id: string) => boolean;
}

/** Whether there is anything in a month that an import would replace. */
export function isEmptyMonth(doc: Y.Doc): boolean {
  const state = readMonthState(doc);
  return state.slots.length === 0 && state.pattern.length === 0;
}

/** In one transaction of the caller's, on the server. The file's dates must be days of the document's month. */
export function importMonth(doc: Y.Doc, file: MonthFile, has: StudioHas, now: NowNear): void {
  const p = monthParts(doc);
  const before = readMonthState(doc);
  const isNew = before.slots.length === 0 && before.pattern.length === 0;
  const told = monthClasses(before).filter(({ id }) => mayBeTold(madeOf(before.made, id), now));
  const toldIds = new Set(told.map(({ id }) => id));
  clearContent(doc, now.at);
  writeContent(doc, contentOf(file), now.at);
  if (before.dates.from !== file.dates.from) p.head.set("from", file.dates.from);
  if (before.dates.to !== file.dates.to) p.head.set("to", file.dates.to);
  writeCarried(p, file, has);
  for (const [id, { n, at, near }] of Object.entries(before.revisions.slots))
    if (!toldIds.has(id)) p.revisions.set(id, { n, at, ...(near === undefined ? {} : { near }) });
  for (const slot of file.slots) noteRevision(p, slot);
  if (isNew) p.revisions.set(MONTH_STAMP, Math.max(before.revisions.month, Date.parse(file.changedAt)));
  const after = new Set(monthClasses(readMonthState(doc)).map(({ id }) => id));
  for (const slot of told) if (!after.has(slot.id)) setEntry(p.slots, slot.id, slotEntry({ ...slot, out: true }, 0));
  raiseAll(doc, before, toldIds, now);
}

/**
 * Whoever has a class in a calendar needs a higher number than the one they saw. A calendar tells a class as soon as it is there, so
 * that all that ever were there count, also those that are gone and may come back.
 */
function raiseAll(doc: Y.Doc, before: MonthState, told: ReadonlySet<string>, now: NowNear): void {
  const p = monthParts(doc);
  const was = new Map(monthClasses(before).map((slot) => [slot.id, slot]));
  const is = new Map(monthClasses(readMonthState(doc)).map((slot) => [slot.id, slot]));
  for (const id of new Set([...was.keys(), ...Object.keys(before.revisions.slots)])) {
    const last = own(before.revisions.slots, id) ?? { n: 0, at: 0 };
    const noted = revisionOf(p.revisions.get(id));
    const places = [was.get(id), is.get(id)] as const;
    const may =
      !told.has(id) && looksLater(noted, last, before.revisions.month) && (isSame(...places) || noted.at === 0);
    if (may && last.near === undefined) continue;
    const raised: Revision = {
      ...noted,
      ...(last.near === undefined ? {} : { near: last.near }),
      n: Math.max(noted.n, may ? last.n : nextNumber(last.n)),
      at: may ? noted.at : Math.max(noted.at, last.at, Math.floor(now.at / 1000) * 1000),
    };
    p.revisions.set(id, markNear(raised, places, now));
  }
}

/** What the file says of it is not behind what calendars were told. Without a time of its own a class has the month's. */
const looksLater = (noted: Revision, last: Revision, month: number): boolean =>
  noted.n >= last.n && (noted.at === last.at || (noted.at > 0 && noted.at > Math.max(last.at, month)));

const SHOWN = ["date", "start", "minutes", "room", "coach", "theme", "plan", "out"] as const;
const isSame = (a: MonthSlot | undefined, b: MonthSlot | undefined): boolean =>
  SHOWN.every((key) => (a?.[key] || null) === (b?.[key] || null));

const madeOf = (made: ById<number>, id: string): number =>
  own(made, id) ?? own(made, occurrenceOf(id)?.line ?? "") ?? 0;

/** Slots of the days before the month are carried: they are another month's. */
function contentOf(file: MonthFile): MonthContent {
  const { title, holidays, regulars, themes, pattern, fill } = file;
  return {
    ...{ title, regulars },
    ...(holidays ? { holidays } : {}),
    ...(themes ? { themes } : {}),
    ...(pattern ? { pattern } : {}),
    ...(fill ? { fill } : {}),
    slots: file.slots.filter(({ date }) => date >= file.dates.from),
    coachTimes: coachTimesIn(file),
  };
}

const coachTimesIn = (file: Pick<MonthFile, "coaches">): Record<string, CoachTimes> =>
  Object.fromEntries(
    Object.entries(file.coaches).map(([id, { free, away }]) => [
      id,
      { ...(free ? { free } : {}), ...(away ? { away } : {}) },
    ]),
  );

function writeCarried(p: MonthDocParts, file: MonthFile, has: StudioHas): void {
  for (const key of [...p.carried.keys()]) p.carried.delete(key);
  for (const [id, room] of Object.entries(file.rooms)) if (!has.room(id)) p.carried.set(carriedKey("room", id), room);
  for (const [id, { name, roles }] of Object.entries(file.coaches))
    if (!has.coach(id)) p.carried.set(carriedKey("coach", id), { name, roles: [...roles] });
  for (const [id, plan] of Object.entries(file.plans)) if (!has.plan(id)) p.carried.set(carriedKey("plan", id), plan);
  const { known } = file.dates;
  const slots = file.slots.filter(({ date }) => date < file.dates.from);
  if (known !== undefined) p.carried.set(EARLIER, { known, slots });
}

function noteRevision(p: MonthDocParts, slot: MonthSlot): void {
  const { id, sequence, changedAt, formerCoaches, formerRooms } = slot;
  const said = (["sequence", "formerCoaches", "formerRooms"] as const).filter((key) => slot[key] !== undefined);
  const revision: Revision = {
    n: sequence ?? 0,
    at: changedAt === undefined ? 0 : Date.parse(changedAt),
    ...(formerCoaches ? { formerCoaches } : {}),
    ...(formerRooms ? { formerRooms } : {}),
    said,
  };
  p.revisions.set(id, revision);
}
