/** New month documents. Only the server calls this, once per month, and stores the update bytes. */
import * as Y from "yjs";
import { MONTH_DOC_VERSION, monthParts, type Slot, type SlotMap } from "./layout.ts";

/** A document for `month` ('YYYY-MM') with these slots in it. */
export function createMonthDoc(month: string, slots: readonly Slot[] = []): Y.Doc {
  const doc = new Y.Doc();
  doc.transact(() => {
    const p = monthParts(doc);
    p.meta.set("version", MONTH_DOC_VERSION);
    p.meta.set("month", month);
    for (const slot of slots) p.slots.set(slot.id, newSlotMap(slot));
  });
  return doc;
}

/** A slot as a shared map. Its shared texts are created only here, together with the slot. */
export function newSlotMap(slot: Slot): SlotMap {
  const map: SlotMap = new Y.Map();
  map.set("date", slot.date);
  map.set("time", slot.time);
  map.set("minutes", slot.minutes);
  if (slot.coachId !== null) map.set("coachId", slot.coachId);
  if (slot.roomId !== null) map.set("roomId", slot.roomId);
  if (slot.planId !== null) map.set("planId", slot.planId);
  map.set("theme", new Y.Text(slot.theme));
  map.set("note", new Y.Text(slot.note));
  return map;
}
