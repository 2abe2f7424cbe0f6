/** Days and times of day as the floor words them, in the studio's formats. */
import { relativeDay, timeWords, wallOf } from "#lib/formats/dates.ts";
import type { Formats } from "#lib/formats/formats.ts";
import { plural } from "#lib/plan/format.ts";

/** A slot `2026-05-04T18:00` of the studio's wall clock: "today 18:00", "tomorrow 18:00", "Monday 18:00", "4 May 18:00". */
export function slotWords(slot: string, now: number, f: Formats): string {
  const [date = "", time = ""] = slot.split("T");
  return `${relativeDay(date, wallOf(now, f).date, f)} ${timeWords(time, f)}`;
}

/** "just now", "12 minutes ago", "3 hours ago", "2 days ago". */
export function agoWords(at: number, now: number): string {
  const minutes = Math.floor((now - at) / 60_000);
  if (minutes < 1) return "just now";
  const count = (n: number, unit: string) => `${plural(n, unit)} ago`;
  if (minutes < 60) return count(minutes, "minute");
  if (minutes < 48 * 60) return count(Math.floor(minutes / 60), "hour");
  return count(Math.floor(minutes / 1440), "day");
}
