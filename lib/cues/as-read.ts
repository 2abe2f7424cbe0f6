/**
 * A script line as people read it: its live fields filled as they will be said when the item's work begins. The one way to
 * show a line anywhere but in the editor and in files, where the fields themselves are wanted.
 */
import { type ClassClock, classClock } from "#lib/clock/clock.ts";
import type { MoveItem, Plan } from "#lib/plan/schema.ts";
import { fillLiveFields, type LiveMoment } from "./live-fields.ts";

export type AsRead = (item: MoveItem, text: string) => string;

/** Reads lines of a plan. An item that the plan does not hold, as one that was taken out, is read as if it came first. */
export function readerOf(plan: Plan, known?: ClassClock): AsRead {
  let clock = known;
  let rows: ReadonlyMap<string, LiveMoment["row"]> | undefined;
  return (item, text) => {
    // Most lines have no field, and then nothing has to be worked out.
    if (!text.includes("{")) return text;
    clock ??= classClock(plan);
    rows ??= new Map(clock.rows.map((row) => [row.item, row]));
    const row = rows.get(item.id) ?? { start: 0, end: item.seconds };
    return fillLiveFields(text, { plan, item, row, total: clock.total, at: row.start });
  };
}
