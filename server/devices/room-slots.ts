/** When each plan is next taught in a room, by the programme of this month and the next, and what changed since it was signed. */

import { newestMonthEdition } from "#db/repos/month-edition-repo.ts";
import { addMonths, monthOf } from "#lib/calendar/days.ts";
import { changeMarks } from "#lib/month/changes/change-words.ts";
import { slotChanges } from "#lib/month/changes/slot-changes.ts";
import { expandMonth } from "#lib/month/expand.ts";
import type { MonthSlot } from "#lib/month/types.ts";
import { monthClasses } from "#lib/programme/read.ts";
import type { Springline } from "#server/context/springline.ts";
import { studioClock } from "#server/month-facts/month-settings.ts";
import { signedMonthFile } from "#server/month-facts/signed-month-file.ts";
import { monthStateOf } from "#server/programme/read-month-file.ts";

type App = Pick<Springline, "db" | "documents" | "now">;

/** A class that began less than this long ago (ms) is still the next one. */
const STILL_ON_MS = 90 * 60_000;

export interface NextClass {
  /** `2026-05-04T18:00` on the studio's wall clock. */
  readonly at: string;
  /** What changed since the month was signed off: "moved from 18:00", "other plan". */
  readonly marks: readonly string[];
}

/** The next class in this room of each plan, by plan id, in order of time. One that was called off is none. */
export function nextSlotsOfRoom(app: App, roomId: string): Map<string, NextClass> {
  const from = studioClock(app, app.now() - STILL_ON_MS);
  const next = new Map<string, NextClass>();
  for (const month of [monthOf(from), addMonths(monthOf(from), 1)]) {
    for (const { slot, marks } of classesOf(app, month)) {
      const at = `${slot.date}T${slot.start}`;
      if (slot.room !== roomId || typeof slot.plan !== "string" || at < from) continue;
      const earlier = next.get(slot.plan);
      if (earlier === undefined || at < earlier.at) next.set(slot.plan, { at, marks });
    }
  }
  return new Map([...next].sort(([, a], [, b]) => (a.at < b.at ? -1 : Number(a.at > b.at))));
}

interface MarkedSlot {
  readonly slot: MonthSlot;
  readonly marks: readonly string[];
}

/**
 * As the month is now. The programme only orders the cards and adds some: of a month that cannot be read just now, what was signed
 * counts, or nothing, and a class never depends on it.
 */
function classesOf(app: App, month: string): MarkedSlot[] {
  const live = monthStateOf(app, month);
  const signed = signedMonthFile(newestMonthEdition(app.db, month));
  if (!live.ok) return signed ? expandMonth(signed).flatMap((slot) => on(slot, month, [])) : [];
  const changed = new Map((signed ? slotChanges(signed, live.value) : []).map((change) => [change.id, change]));
  return monthClasses(live.value).flatMap((slot) => {
    const change = changed.get(slot.id);
    return on(slot, month, change ? changeMarks(change) : []);
  });
}

/** Not those of the days before, which are another month's. */
const on = (slot: MonthSlot, month: string, marks: readonly string[]): MarkedSlot[] =>
  slot.out === true || monthOf(slot.date) !== month ? [] : [{ slot, marks }];
