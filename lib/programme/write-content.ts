/** Writes what a month file holds into a document, new or there already. */
import * as Y from "yjs";
import { setText } from "#lib/doc/write.ts";
import type { ById, MonthFile, MonthSlot, PatternLine } from "#lib/month/types.ts";
import { lineEntry, listEntries, regularsEntry, setEntry, slotEntries, slotEntry, themeEntry } from "./entries.ts";
import { DOT, LEFT_OUT, type MonthDocParts, monthParts, NOTE_OWN, occurrenceOf } from "./layout.ts";
import type { CoachTimes } from "./read-lists.ts";
import { changedBySlot, clearOccurrence } from "./values.ts";

/** What a document holds of a month file. */
export interface MonthContent
  extends Partial<Pick<MonthFile, "title" | "holidays" | "regulars" | "themes" | "pattern" | "slots" | "fill">> {
  readonly coachTimes?: ById<CoachTimes>;
}

/** In the caller's transaction. `now` in ms since the epoch: when its classes were added. */
export function writeContent(doc: Y.Doc, content: MonthContent, now: number): void {
  const p = monthParts(doc);
  if (content.title !== undefined) setText({ doc, origin: "server" }, p.title, content.title);
  for (const [date, name] of Object.entries(content.holidays ?? {})) p.holidays.set(date, name);
  for (const [id, regulars] of Object.entries(content.regulars ?? {}))
    setEntry(p.regulars, id, regularsEntry(regulars));
  for (const [id, theme] of Object.entries(content.themes ?? {})) setEntry(p.themes, id, themeEntry(theme));
  for (const [id, times] of Object.entries(content.coachTimes ?? {})) writeCoachTimes(p, id, times);
  (content.pattern ?? []).forEach((line, order) => {
    setEntry(p.lines, line.id, lineEntry(line, now, order));
  });
  const lines = new Map((content.pattern ?? []).map((line) => [line.id, line]));
  for (const slot of content.slots ?? []) {
    const line = lines.get(occurrenceOf(slot.id)?.line ?? "");
    if (line) writeOccurrence(p, slot, line);
    else setEntry(p.slots, slot.id, slotEntry(slot, now));
  }
  if (content.fill) writeFill(p, content.fill);
  const given = GIVEN.filter((part) => content[part] !== undefined);
  if (given.length > 0) p.head.set("given", given.join(" "));
}

/** Parts of a month file that may be left out: that one was there is kept, though it is empty. */
const GIVEN = ["holidays", "themes", "pattern", "fill"] as const;

const keyOf = (rank: number): string => String(rank).padStart(4, "0");

function writeCoachTimes(p: MonthDocParts, coach: string, times: CoachTimes): void {
  for (const kind of ["free", "away"] as const) {
    const list = times[kind];
    if (list === undefined) continue;
    p.coaches.set(coach + DOT + kind, true);
    list.forEach((time, rank) => {
      p.coaches.set(`${coach}${DOT}${kind}${DOT}${keyOf(rank)}`, { ...time });
    });
  }
}

/** What differs from the line, also where the slot leaves out what the line has. */
function writeOccurrence(p: MonthDocParts, slot: MonthSlot, line: PatternLine): void {
  const start = slot.id + DOT;
  const own = new Map(slotEntries(slot));
  const base = new Map(slotEntries(line));
  for (const [key, value] of own) if (key === "date" || base.get(key) !== value) p.changed.set(start + key, value);
  for (const key of base.keys()) if (!own.has(key)) p.changed.set(start + key, LEFT_OUT);
  if (slot.note === line.note) return;
  p.changed.set(start + NOTE_OWN, slot.note === undefined ? null : true);
  const key = `${start}note${DOT}0`;
  for (const [other, text] of p.changed)
    if (other.startsWith(`${start}note${DOT}`) && text instanceof Y.Text)
      setText({ doc: text.doc as Y.Doc, origin: "server" }, text, other === key ? (slot.note ?? "") : "");
  if (slot.note && !p.changed.has(key)) p.changed.set(key, new Y.Text(slot.note));
}

function writeFill({ head }: MonthDocParts, fill: NonNullable<MonthFile["fill"]>): void {
  for (const list of ["slots", "plans"] as const)
    for (const [key, value] of fill[list] ? listEntries(`fill.${list}`, fill[list]) : []) head.set(key, value);
  if (fill.wishes) head.set("fill.wishes", true);
  (fill.wishes ?? []).forEach(({ slot, plan, weight }, rank) => {
    const key = `fill.wishes.${slot}.${plan}`;
    head.set(head.has(key) ? `${key}.${rank}` : key, weight === undefined ? { rank } : { rank, weight });
  });
  if (fill.mostUses !== undefined) head.set("fill.mostUses", fill.mostUses);
}

/** Takes everything out that a document holds of a month file; entries by a mark. In the caller's transaction. */
export function clearContent(doc: Y.Doc, now: number): void {
  const p = monthParts(doc);
  for (const map of [p.head, p.holidays, p.coaches]) for (const key of [...map.keys()]) map.delete(key);
  for (const [id, own] of changedBySlot(p.changed)) clearOccurrence(p.changed, id, own);
  for (const entries of [p.regulars, p.themes, p.lines, p.slots])
    for (const map of entries.values())
      if (map instanceof Y.Map && map.get("deleted") === undefined) map.set("deleted", now);
}
