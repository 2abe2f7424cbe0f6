/** Where an hour of the month stands down the sheet, and times in words. */
import { dayNumber } from "#lib/calendar/days.ts";
import { wallTimeAt } from "#lib/calendar/zone.ts";

const DAY_MS = 86_400_000;

/** A sheet's days down the page, and its wall clock. */
export interface HourScale {
  readonly first: string;
  readonly zone: string;
  /** Top of each day, and the foot after the last. */
  readonly tops: readonly number[];
}

/** An instant (ms) down the sheet; before its first day its top, after its last its foot. */
export const yOfInstant = (scale: HourScale, at: number): number => yOfWall(scale, wallTimeAt(at, scale.zone));

/** A wall time, in ms as if the zone were UTC. */
function yOfWall({ first, tops }: HourScale, wall: number): number {
  const days = wall / DAY_MS - dayNumber(first);
  const day = Math.floor(days);
  const [top, foot] = [tops[day], tops[day + 1]];
  if (day < 0) return tops[0] ?? 0;
  if (top === undefined || foot === undefined) return tops.at(-1) ?? 0;
  return top + (days - day) * (foot - top);
}

/** "23 h", "43 h 20", "40 min". Whole minutes. */
export function tideHours(minutes: number): string {
  const whole = Math.round(minutes);
  const [hours, rest] = [Math.floor(whole / 60), whole % 60];
  if (hours === 0) return `${rest} min`;
  return rest === 0 ? `${hours} h` : `${hours} h ${rest}`;
}
