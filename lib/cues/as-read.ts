/**
 * A script line as people read it, with its live fields filled in as of the start of the item's work. Every place but the
 * editor and files shows lines this way.
 */
import { type ClassClock, classClock } from "#lib/clock/clock.ts";
import type { MoveItem, Plan } from "#lib/plan/schema.ts";
import { fillLiveFields, type LiveMoment } from "./live-fields.ts";

export type AsRead = (item: MoveItem, text: string) => string;

/** Reads lines of a plan. An item that is not in the plan, such as one that was taken out, is read as if it came first. */
export function readerOf(plan: Plan, known?: ClassClock): AsRead {
  let clock = known;
  let rows: ReadonlyMap<string, LiveMoment["row"]> | undefined;
  return (item, text) => {
    // Most lines have no live field and need no clock.
    if (!text.includes("{")) return text;
    clock ??= classClock(plan);
    rows ??= new Map(clock.rows.map((row) => [row.item, row]));
    const row = rows.get(item.id) ?? { start: 0, end: item.seconds };
    return fillLiveFields(text, { plan, item, row, total: clock.total, at: row.start });
  };
}
