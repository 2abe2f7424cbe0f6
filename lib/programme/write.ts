/**
 * What a person can do to a month: one function per act, each in one transaction with the caller's origin, so that undo
 * reverts exactly one act of one's own. A slot is never deleted for good.
 */
import * as Y from "yjs";
import { isDate, isTime, monthOf } from "#lib/calendar/days.ts";
import { act, setText, type Writer } from "#lib/doc/write.ts";
import { newSlotMap } from "./create.ts";
import { monthParts, SLOT_MINUTES, type Slot, type SlotMap } from "./layout.ts";

/** Fields for `setSlotField`. Day and time go through `moveSlot`, since they belong together. */
export type SlotField = Exclude<keyof Slot, "id" | "date" | "time">;

/** Adds a slot. Returns false and writes nothing when its day is not in this month or its time is invalid. */
export function addSlot(w: Writer, slot: Slot): boolean {
  if (!fits(w.doc, slot.date, slot.time) || monthParts(w.doc).slots.has(slot.id)) return false;
  const minutes = wholeMinutes(slot.minutes);
  act(w, () => monthParts(w.doc).slots.set(slot.id, newSlotMap({ ...slot, minutes })));
  return true;
}

/** Sets one field. Texts change only where they differ, so that two people typing both keep their letters. */
export function setSlotField<F extends SlotField>(w: Writer, id: string, field: F, value: Slot[F]): void {
  withSlot(w, id, (map) => {
    const text = map.get(field);
    if (text instanceof Y.Text) setText(w, text, String(value ?? ""));
    else if (value === null || value === "") map.delete(field);
    else {
      const next = field === "minutes" ? wholeMinutes(Number(value)) : value;
      if (map.get(field) !== next) map.set(field, next);
    }
  });
}

/**
 * Moves a slot to another day, time, or both. What others change in it meanwhile stays.
 * Returns false and writes nothing when the day is in another month: a slot belongs to its month's document.
 */
export function moveSlot(w: Writer, id: string, to: { date?: string; time?: string }): boolean {
  const map = monthParts(w.doc).slots.get(id);
  const date = to.date ?? map?.get("date");
  const time = to.time ?? map?.get("time");
  if (!map || typeof date !== "string" || typeof time !== "string" || !fits(w.doc, date, time)) return false;
  withSlot(w, id, () => {
    if (to.date !== undefined && map.get("date") !== date) map.set("date", date);
    if (to.time !== undefined && map.get("time") !== time) map.set("time", time);
  });
  return true;
}

/** Takes a slot out; `restoreSlot` puts it back as it was. `now` in ms since the epoch. */
export function deleteSlot(w: Writer, id: string, now: number): void {
  withSlot(w, id, (map) => map.set("deleted", now));
}

export function restoreSlot(w: Writer, id: string): void {
  withSlot(w, id, (map) => map.delete("deleted"));
}

function fits(doc: Y.Doc, date: string, time: string): boolean {
  return isDate(date) && isTime(time) && monthOf(date) === monthParts(doc).meta.get("month");
}

const wholeMinutes = (n: number): number =>
  Math.min(SLOT_MINUTES.max, Math.max(SLOT_MINUTES.min, Math.round(Number.isFinite(n) ? n : SLOT_MINUTES.min)));

function withSlot(w: Writer, id: string, change: (map: SlotMap) => void): void {
  const map = monthParts(w.doc).slots.get(id);
  if (map) act(w, () => change(map));
}
