/**
 * When a sheet that a coach opened over the class closes by itself: it is a question about minutes from now, and what
 * happens next must not wait behind it.
 */
import type { FloorView } from "./view.ts";

/** Long enough to read the ways, short enough to be gone when it was forgotten (our own choice, no source). */
export const SHEET_UNTOUCHED_MS = 20_000;

/** Where the class is, as far as a sheet minds. */
export interface SheetMoment {
  readonly item: string;
  readonly phase: FloorView["phase"];
  readonly headsUp: boolean;
}
export type SheetClosing = "change" | "untouched";

export const sheetMoment = ({ item, phase, headsUp }: FloorView): SheetMoment => ({
  item: item?.id ?? phase,
  phase,
  headsUp,
});

/**
 * Why it closes now, null where it stays. `was` is the moment looked at before, `untouchedMs` how long nobody has touched
 * anything. One that is opened within a heads-up or a change stays until the next begins.
 */
export function sheetCloses(was: SheetMoment, is: SheetMoment, untouchedMs: number): SheetClosing | null {
  const headsUpBegins = is.headsUp && !was.headsUp;
  if (headsUpBegins || is.item !== was.item || (is.phase !== was.phase && is.phase === "change")) return "change";
  return untouchedMs >= SHEET_UNTOUCHED_MS ? "untouched" : null;
}

/** What the screen says once "end on time" has closed by itself. */
export const CLOSED_WORDS: Readonly<Record<SheetClosing, string>> = {
  change: "A change is coming: end on time has closed. Nothing was changed.",
  untouched: "End on time has closed after 20 s. Nothing was changed.",
};
