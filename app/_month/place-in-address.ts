/** What is open beside the month in the page's address, so that going to a class's plan and back leads to the same place. */
import { HOLIDAY_MARK } from "#lib/protocol/places.ts";
import type { MonthChoice } from "./month-desk.ts";

const MARK = "#class=";

/** The open class, or the holidays at one of their days; null where the address names nothing. */
export function placeInAddress(month: string): Pick<MonthChoice, "panel" | "at"> | null {
  const { hash } = window.location;
  if (hash.startsWith(MARK)) {
    const slot = decoded(hash.slice(MARK.length));
    return { panel: { kind: "class", slot }, at: { date: `${month}-01`, slot } };
  }
  const date = hash.startsWith(HOLIDAY_MARK) ? hash.slice(HOLIDAY_MARK.length) : "";
  if (!/^\d{4}-\d{2}-\d{2}$/.test(date)) return null;
  return {
    panel: { kind: "holidays", day: date },
    at: { date: date.startsWith(month) ? date : `${month}-01`, slot: null },
  };
}

/** Somebody may have typed it. */
function decoded(text: string): string {
  try {
    return decodeURIComponent(text);
  } catch {
    return text;
  }
}

export function writeAddress(slot: string | null): void {
  const { pathname, search, hash } = window.location;
  const next = slot === null ? "" : MARK + encodeURIComponent(slot);
  if (next !== hash) window.history.replaceState(window.history.state, "", pathname + search + next);
}
