/**
 * Takes a month file into a month's document: into an empty one, or in the place of what is there. Whatever anybody can have been
 * told of and is not in the file stays as called off.
 */
import type * as Y from "yjs";
import type { ById, MonthFile, MonthSlot } from "#lib/month/types.ts";
import { own } from "#lib/plan/lookup.ts";
import { carriedKey, EARLIER } from "./carried.ts";
import { setEntry, slotEntry } from "./entries.ts";
import { mayBeTold, type Now } from "./keep-revisions.ts";
import { type MonthDocParts, monthParts, occurrenceOf } from "./layout.ts";
import { monthClasses, readMonthState } from "./read.ts";
import type { CoachTimes } from "./read-lists.ts";
import { MONTH_STAMP, type Revision, revisionOf } from "./revisions.ts";
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
export function importMonth(doc: Y.Doc, file: MonthFile, has: StudioHas, now: Now): void {
  const p = monthParts(doc);
  const before = readMonthState(doc);
  const isNew = before.slots.length === 0 && before.pattern.length === 0;
  const told = monthClasses(before).filter(({ id }) => mayBeTold(madeOf(before.made, id), now));
  clearContent(doc, now.at);
  writeContent(doc, contentOf(file), now.at);
  if (before.dates.from !== file.dates.from) p.head.set("from", file.dates.from);
  if (before.dates.to !== file.dates.to) p.head.set("to", file.dates.to);
  writeCarried(p, file, has);
  const toldIds = new Set(told.map(({ id }) => id));
  for (const id of Object.keys(before.revisions.slots)) if (!toldIds.has(id)) p.revisions.delete(id);
  for (const slot of file.slots) noteRevision(p, slot);
  if (isNew) p.revisions.set(MONTH_STAMP, Date.parse(file.changedAt));
  const after = new Set(monthClasses(readMonthState(doc)).map(({ id }) => id));
  for (const slot of told) if (!after.has(slot.id)) setEntry(p.slots, slot.id, slotEntry({ ...slot, out: true }, 0));
  // Whoever has it in a calendar needs a higher number than the one they saw.
  for (const id of toldIds) raise(p, id, own(before.revisions.slots, id)?.n ?? 0, now.at);
}

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

function raise(p: MonthDocParts, id: string, was: number, at: number): void {
  const noted = revisionOf(p.revisions.get(id));
  p.revisions.set(id, {
    ...noted,
    n: Math.max(noted.n, was + 1),
    at: Math.max(noted.at, Math.floor(at / 1000) * 1000),
  });
}
