/** Days and times of day as the floor words them, by the device's own clock and zone. */
import { plural } from "#lib/plan/format.ts";

const DAYS = ["Sunday", "Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday"];
const DAY_MS = 86_400_000;

/** A slot `2026-05-04T18:00` of the studio's wall clock: "today 18:00", "tomorrow 18:00", "Monday 18:00", "4 May 18:00". */
export function slotWords(slot: string, now: number): string {
  const [date = "", time = ""] = slot.split("T");
  const [year = 0, month = 1, day = 1] = date.split("-").map(Number);
  const today = new Date(now);
  const midnight = Date.UTC(today.getFullYear(), today.getMonth(), today.getDate());
  const slotDay = Date.UTC(year, month - 1, day);
  const ahead = Math.round((slotDay - midnight) / DAY_MS);
  if (ahead === 0) return `today ${time}`;
  if (ahead === 1) return `tomorrow ${time}`;
  if (ahead > 1 && ahead < 7) return `${DAYS[new Date(slotDay).getUTCDay()]} ${time}`;
  const words = new Date(slotDay).toLocaleDateString("en-GB", { day: "numeric", month: "long", timeZone: "UTC" });
  return `${words} ${time}`;
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

const timeOfDay = (at: number, seconds: boolean): string =>
  new Date(at).toLocaleTimeString("en-GB", {
    hour: "2-digit",
    minute: "2-digit",
    ...(seconds ? { second: "2-digit" } : {}),
  });

/** "18:03"; `at` in ms since the epoch. */
export const hourMinute = (at: number): string => timeOfDay(at, false);
/** "18:03:07" */
export const hourMinuteSecond = (at: number): string => timeOfDay(at, true);
