/**
 * When a sheet that the coach opened over the class closes by itself. It asks about minutes from now and must not cover
 * what happens next.
 */
import { FLOOR_SENTENCES } from "./floor-sentences.ts";
import type { FloorView } from "./view.ts";

/** Long enough to read the choices, short enough if the sheet was forgotten (our own choice, no source). */
export const SHEET_UNTOUCHED_MS = 20_000;

/** Where the class is, as far as a sheet needs to know. */
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
 * Why it closes now, or null when it stays. `was`: the moment checked before. `untouchedMs`: time since the last touch.
 * A sheet opened during a heads-up or a change stays until the next one begins.
 */
export function sheetCloses(was: SheetMoment, is: SheetMoment, untouchedMs: number): SheetClosing | null {
  const headsUpBegins = is.headsUp && !was.headsUp;
  if (headsUpBegins || is.item !== was.item || (is.phase !== was.phase && is.phase === "change")) return "change";
  return untouchedMs >= SHEET_UNTOUCHED_MS ? "untouched" : null;
}

/** What the screen says once "end on time" has closed by itself. */
export const CLOSED_WORDS: Readonly<Record<SheetClosing, string>> = {
  change: FLOOR_SENTENCES.closedForChange,
  untouched: FLOOR_SENTENCES.closedUntouched(SHEET_UNTOUCHED_MS / 1000),
};
