/** Classes written by the words that lists show them in. */
import type { Writer } from "#lib/doc/write.ts";
import type { Slot } from "#lib/programme/layout.ts";
import { addSlot, changeSlot, type SlotChange, setSlotNote } from "#lib/programme/write.ts";
import { themeNamed } from "#lib/programme/write-lists.ts";

/** `now`: when it was added, ms since the epoch; long ago when left out. */
export const addShown = (w: Writer, slot: Slot, now = 0): boolean =>
  addSlot(
    w,
    {
      ...{ id: slot.id, date: slot.date, start: slot.time, minutes: slot.minutes },
      ...{ coach: slot.coachId ?? undefined, room: slot.roomId ?? undefined, plan: slot.planId ?? undefined },
      ...{ theme: themeNamed(w, slot.theme) ?? undefined, note: slot.note === "" ? undefined : slot.note },
    } as Parameters<typeof addSlot>[1],
    now,
  );

const NAMES = {
  time: "start",
  coachId: "coach",
  roomId: "room",
  planId: "plan",
  date: "date",
  minutes: "minutes",
} as const;

export function setShown<F extends keyof Slot>(w: Writer, id: string, field: F, value: Slot[F]): void {
  if (field === "note") setSlotNote(w, id, String(value));
  else if (field === "theme") changeSlot(w, id, { theme: themeNamed(w, String(value)) });
  else changeSlot(w, id, { [NAMES[field as keyof typeof NAMES]]: value } as SlotChange);
}
