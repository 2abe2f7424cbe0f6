/** When each plan is next taught in a room, by the programme of this month and the next. */

import { addMonths, monthOf } from "#lib/calendar/days.ts";
import { readMonth } from "#lib/programme/read.ts";
import { monthDoc, unavailableReason } from "#server/context/live-documents.ts";
import type { Springline } from "#server/context/springline.ts";
import { studioClock } from "#server/month-facts/month-settings.ts";

/** A class that began less than this long ago (ms) is still the next one. */
const STILL_ON_MS = 90 * 60_000;
/** The next slot in this room of each plan, by plan id, `2026-05-04T18:00` on the studio's wall clock. An unreadable month counts as empty. */
export function nextSlotsOfRoom(
  app: Pick<Springline, "db" | "documents" | "now">,
  roomId: string,
): Map<string, string> {
  const from = studioClock(app, app.now() - STILL_ON_MS);
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

function slotsOf(app: Pick<Springline, "documents">, month: string) {
  try {
    return app.documents.withDoc(monthDoc(month), (doc) => readMonth(doc).slots);
  } catch (error) {
    // The programme only orders the cards and adds some: a class must never depend on it.
    if (unavailableReason(error) === undefined) throw error;
    return [];
  }
}
