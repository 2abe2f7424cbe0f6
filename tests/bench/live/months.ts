/** The month of the live works: a large studio's, in the calendar month of the run, since others are closed to writing. */
import { dirname, join } from "node:path";
import * as Y from "yjs";
import { dateOfDay, daysOfMonth, monthOf } from "#lib/calendar/days.ts";
import type { MonthFile } from "#lib/month/types.ts";
import { createMonthDoc } from "#lib/programme/create.ts";
import { importMonth } from "#lib/programme/import-file.ts";
import { busyMonth } from "#tests/support/busy-month.ts";

const SIZES = { coaches: 12, slots: 800, plans: 60 };
/** Single ones; the pattern's come on top. */
const SINGLES = 385;
const DAY_MS = 86_400_000;
const EVERYTHING = { room: () => true, coach: () => true, plan: () => true };

export const monthKey = (now: number): string => monthOf(dateOfDay(Math.floor(now / DAY_MS)));

/** 12 coaches, 60 plans and 400 classes or one or two more or fewer, as the pattern's days fall. */
export function liveMonth(now: number): MonthFile {
  const { dates: _, holidays: _h, slots, ...rest } = busyMonth(SIZES);
  const days = daysOfMonth(monthKey(now));
  const inMonth = slots.flatMap((slot) => {
    const date = days[Number(slot.date.slice(8)) - 1];
    return date === undefined || slot.date < "2026-03-01" ? [] : [{ ...slot, date }];
  });
  return { ...rest, dates: { from: days[0] ?? "", to: days.at(-1) ?? "" }, slots: inMonth.slice(0, SINGLES) };
}

export function monthUpdate(now: number): Uint8Array {
  const doc = createMonthDoc(monthKey(now));
  doc.transact(() => importMonth(doc, liveMonth(now), EVERYTHING, { at: now, signedAt: null, nearUntil: "" }));
  return Y.encodeStateAsUpdate(doc);
}

export const monthFileBeside = (baseFile: string): string => join(dirname(baseFile), "month.update");
