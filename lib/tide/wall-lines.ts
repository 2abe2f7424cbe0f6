/** A room's classes for the wall, each with what became of it since the month was signed, and those that it no longer has. */
import { changeMarks } from "#lib/month/changes/change-words.ts";
import { goneFromRoom } from "#lib/month/changes/gone-from-room.ts";
import type { ChangedSlot } from "#lib/month/changes/slot-changes.ts";
import { byWallTime } from "#lib/month/expand.ts";
import type { MonthFile, MonthSlot } from "#lib/month/types.ts";
import { listWords } from "#lib/plan/format.ts";
import { own } from "#lib/plan/lookup.ts";
import { classTitle } from "./day-marks.ts";

export interface WallLine {
  /** Of its class. */
  readonly id: string;
  readonly date: string;
  readonly start: string;
  readonly minutes: number;
  readonly title: string;
  /** The coach's name; null where there is none. */
  readonly coach: string | null;
  /** It stood here when the month was signed, and does not now. */
  readonly gone: boolean;
  /** "moved from 18:00 and other coach", "called off"; null for a class as it was signed. */
  readonly since: string | null;
}

interface WallOf {
  readonly month: MonthFile;
  /** All that there are. */
  readonly slots: readonly MonthSlot[];
  readonly changes: readonly ChangedSlot[];
}

/** By time. */
export function wallLines({ month, slots, changes }: WallOf, room: string): WallLine[] {
  const marks = new Map(changes.map((change) => [change.id, listWords(changeMarks(change))]));
  const on = slots.filter((slot) => slot.out !== true && slot.room === room);
  const present = on.map((slot) => ({ slot, line: lineOf(month, slot, { gone: false, since: marks.get(slot.id) }) }));
  const gone = goneFromRoom(changes, room, month).map(({ was, words }) => ({
    slot: was,
    line: lineOf(month, was, { gone: true, since: words }),
  }));
  return [...present, ...gone].sort((a, b) => byWallTime(a.slot, b.slot)).map(({ line }) => line);
}

function lineOf(
  month: MonthFile,
  slot: MonthSlot,
  { gone, since }: { gone: boolean; since?: string | undefined },
): WallLine {
  const { id, date, start, minutes, coach } = slot;
  const name = typeof coach === "string" ? (own(month.coaches, coach)?.name ?? null) : null;
  return { id, date, start, minutes, title: classTitle(month, slot), coach: name, gone, since: since || null };
}
