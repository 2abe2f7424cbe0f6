/** When each plan is next taught in a room, by the programme of this month and the next. */

import { addMonths, monthOf } from "#lib/programme/calendar.ts";
import { readMonth } from "#lib/programme/read.ts";
import { monthDoc, unavailableReason } from "#server/context/live-documents.ts";
import type { Springline } from "#server/context/springline.ts";

/** A class that began this long ago is still the one the device is wanted for. ms. */
const STILL_ON_MS = 90 * 60_000;
const two = (n: number) => String(n).padStart(2, "0");

/** `2026-05-04T18:00` by the wall clock of the server, which stands in the studio's town. */
export function wallClock(at: number): string {
  const t = new Date(at);
  const date = `${t.getFullYear()}-${two(t.getMonth() + 1)}-${two(t.getDate())}`;
  return `${date}T${two(t.getHours())}:${two(t.getMinutes())}`;
}

/** Plan id to the time of its next slot in this room, in the form of `wallClock`. A month that cannot be read is empty. */
export function nextSlotsOfRoom(app: Pick<Springline, "rooms" | "now">, roomId: string): Map<string, string> {
  const from = wallClock(app.now() - STILL_ON_MS);
  const next = new Map<string, string>();
  for (const month of [monthOf(from), addMonths(monthOf(from), 1)]) {
    for (const slot of slotsOf(app, month)) {
      const at = `${slot.date}T${slot.time}`;
      if (slot.roomId !== roomId || slot.planId === null || at < from) continue;
      const earlier = next.get(slot.planId);
      if (earlier === undefined || at < earlier) next.set(slot.planId, at);
    }
  }
  return next;
}

function slotsOf(app: Pick<Springline, "rooms">, month: string) {
  try {
    return app.rooms.withDoc(monthDoc(month), (doc) => readMonth(doc).slots);
  } catch (error) {
    // The programme only sorts the shelf and adds to it: a class must never depend on it.
    if (unavailableReason(error) === undefined) throw error;
    return [];
  }
}
