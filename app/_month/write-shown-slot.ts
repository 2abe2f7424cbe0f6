/** A class's fields, as the dialog shows them, written into the month. */
import type { Writer } from "#lib/doc/write.ts";
import type { Slot } from "#lib/programme/layout.ts";
import { addSlot, changeSlot, type SlotChange } from "#lib/programme/write.ts";
import { themeNamed } from "#lib/programme/write-lists.ts";

/** `now` in ms since the epoch. */
export function addShownSlot(w: Writer, slot: Slot, now: number): boolean {
  const { id, date, time, minutes, coachId, roomId, planId, note } = slot;
  const theme = themeNamed(w, slot.theme);
  return addSlot(
    w,
    {
      ...{ id, date, start: time, minutes },
      ...(coachId === null ? {} : { coach: coachId }),
      ...(roomId === null ? {} : { room: roomId }),
      ...(planId === null ? {} : { plan: planId }),
      ...(theme === null ? {} : { theme }),
      ...(note === "" ? {} : { note }),
    },
    now,
  );
}

/** All but the note, which is a shared text. */
export function writeShownSlot(w: Writer, id: string, part: Partial<Slot>): void {
  const { date, time, minutes, coachId, roomId, planId, theme } = part;
  const change: SlotChange = {
    ...(date === undefined ? {} : { date }),
    ...(time === undefined ? {} : { start: time }),
    ...(minutes === undefined ? {} : { minutes }),
    ...(coachId === undefined ? {} : { coach: coachId }),
    ...(roomId === undefined ? {} : { room: roomId }),
    ...(planId === undefined ? {} : { plan: planId }),
    ...(theme === undefined ? {} : { theme: themeNamed(w, theme) }),
  };
  changeSlot(w, id, change);
}
