/**
 * What a month takes over of a file's numbers and times of change. The format allows more than a calendar can tell: SEQUENCE is an INTEGER
 * of 32 bits (RFC 5545 §3.3.8), and a time to come would stand above every later change.
 */
import type { MonthFile, MonthSlot } from "#lib/month/types.ts";
import { plural } from "#lib/plan/format.ts";

/** Far more changes than a class can see, and far enough below what a calendar can tell. Our own choice. */
export const MOST_TAKEN_NUMBER = 1_000_000;

interface BoundedFile {
  readonly file: MonthFile;
  /** Sentences for the person who brought it. */
  readonly notes: readonly string[];
}

/** A number above the bound is left out, and so counted anew above what was told; a time after `now`, in ms, counts as now. */
export function boundedFile(file: MonthFile, now: number): BoundedFile {
  const present = `${new Date(now).toISOString().slice(0, 19)}Z`;
  const high = file.slots.filter(isHigh).length;
  const late = file.slots.filter(({ changedAt = "" }) => changedAt > present).length;
  const isLate = file.changedAt > present;
  if (high === 0 && late === 0 && !isLate) return { file, notes: [] };
  const slots = file.slots.map((slot) => boundedSlot(slot, present));
  return { file: { ...file, changedAt: isLate ? present : file.changedAt, slots }, notes: notesOf(high, late, isLate) };
}

const isHigh = ({ sequence = 0 }: MonthSlot): boolean => sequence > MOST_TAKEN_NUMBER;

function boundedSlot(slot: MonthSlot, present: string): MonthSlot {
  const isLate = (slot.changedAt ?? "") > present;
  if (!isHigh(slot) && !isLate) return slot;
  const { sequence, ...rest } = slot;
  const kept = sequence === undefined || isHigh(slot) ? {} : { sequence };
  return { ...rest, ...kept, ...(isLate ? { changedAt: present } : {}) };
}

function notesOf(high: number, late: number, isLate: boolean): string[] {
  const what = [...(isLate ? ["the month"] : []), ...(late > 0 ? [plural(late, "class", "classes")] : [])].join(
    " and ",
  );
  return [
    ...(high > 0
      ? [`The number of changes of ${plural(high, "class", "classes")} is above 1,000,000. It is counted anew here.`]
      : []),
    ...(what === "" ? [] : [`The file says that ${what} changed at a time to come. That counts as now.`]),
  ];
}
