/** Lengths and moments in words. Pure. */

/** "25 min"; "25:30" when it is not whole minutes. */
export function lengthWords(seconds: number): string {
  const rest = seconds % 60;
  const minutes = Math.floor(seconds / 60);
  return rest === 0 ? `${minutes} min` : `${minutes}:${String(rest).padStart(2, "0")}`;
}

const DAY = { day: "numeric", month: "long" } as const;
const YEAR = { year: "numeric" } as const;

/** "25 November, 14:05", or "25 November 2026, 14:05", in the reader's own time zone when run in the browser. */
export function momentWords(ms: number, year = false): string {
  const at = new Date(ms);
  const day = at.toLocaleDateString("en-GB", { ...DAY, ...(year ? YEAR : {}) });
  return `${day}, ${at.toLocaleTimeString("en-GB", { hour: "2-digit", minute: "2-digit" })}`;
}

/** The day alone, in UTC: for a page whose reader's zone is not known yet. */
export const dayOfMoment = (ms: number, year = false): string =>
  new Date(ms).toLocaleString("en-GB", { ...DAY, ...(year ? YEAR : {}), timeZone: "UTC" });
