/**
 * Reads a month document into plain slots. Reading never writes. A slot without a valid day or time (a damaged document) is
 * skipped: no error, and the slot stays in the document.
 */
import * as Y from "yjs";
import { isDate, isTime } from "#lib/calendar/days.ts";
import { monthParts, type Slot, type SlotMap } from "./layout.ts";

export interface Month {
  /** 'YYYY-MM'; "" when the document has none. */
  readonly month: string;
  /** Slots that are not taken out, by day and time. */
  readonly slots: readonly Slot[];
}

export interface DeletedSlot {
  readonly slot: Slot;
  /** ms since the epoch. */
  readonly deletedAt: number;
}

export function readMonth(doc: Y.Doc): Month {
  const p = monthParts(doc);
  const month = p.meta.get("month");
  const slots: Slot[] = [];
  for (const [id, map] of p.slots) {
    if (!(map instanceof Y.Map)) continue;
    const slot = map.get("deleted") === undefined ? readSlot(id, map) : undefined;
    if (slot) slots.push(slot);
  }
  return { month: typeof month === "string" ? month : "", slots: slots.sort(bySlotTime) };
}

/** Slots that were taken out and can be put back, newest first. */
export function readDeletedSlots(doc: Y.Doc): DeletedSlot[] {
  const gone: DeletedSlot[] = [];
  for (const [id, map] of monthParts(doc).slots) {
    if (!(map instanceof Y.Map)) continue;
    const deletedAt = map.get("deleted");
    const slot = deletedAt === undefined ? undefined : readSlot(id, map);
    if (slot) gone.push({ slot, deletedAt: typeof deletedAt === "number" ? deletedAt : 0 });
  }
  return gone.sort((a, b) => b.deletedAt - a.deletedAt || (a.slot.id < b.slot.id ? -1 : 1));
}

/** One slot; undefined when there is none or it was taken out. */
export function readSlotById(doc: Y.Doc, id: string): Slot | undefined {
  const map = monthParts(doc).slots.get(id);
  return map instanceof Y.Map && map.get("deleted") === undefined ? readSlot(id, map) : undefined;
}

/** The shared text of a slot's theme or note, for an editor to bind to. */
export function slotTextOf(doc: Y.Doc, id: string, field: "theme" | "note"): Y.Text | undefined {
  const text = monthParts(doc).slots.get(id)?.get(field);
  return text instanceof Y.Text ? text : undefined;
}

/** By day, then time, then id. Compared by code units, so the order is the same everywhere. */
export function bySlotTime(a: Slot, b: Slot): number {
  for (const key of ["date", "time", "id"] as const) if (a[key] !== b[key]) return a[key] < b[key] ? -1 : 1;
  return 0;
}

function readSlot(id: string, map: SlotMap): Slot | undefined {
  const date = map.get("date");
  const time = map.get("time");
  const minutes = map.get("minutes");
  if (typeof date !== "string" || typeof time !== "string" || !isDate(date) || !isTime(time)) return undefined;
  return {
    id,
    date,
    time,
    minutes: typeof minutes === "number" && Number.isFinite(minutes) ? minutes : 0,
    theme: words(map.get("theme")),
    coachId: idOrNull(map.get("coachId")),
    roomId: idOrNull(map.get("roomId")),
    planId: idOrNull(map.get("planId")),
    note: words(map.get("note")),
  };
}

const words = (v: unknown): string => (v instanceof Y.Text ? v.toString() : typeof v === "string" ? v : "");
const idOrNull = (v: unknown): string | null => (typeof v === "string" && v !== "" ? v : null);
