/** What takes time in a class, in order: the opening, every move and pause, the closing. Headings take no time. */
import type { ClockRow } from "#lib/clock/clock.ts";
import { sideWords } from "#lib/plan/format.ts";
import type { Plan, PlanItem } from "#lib/plan/schema.ts";
import type { ClassCell, LaneColumn } from "./types.ts";

export const OPENING_ID = ":opening";
const CLOSING_ID = ":closing";

export interface ColumnsInput {
  readonly plan: Plan;
  /** One row per item, in plan order. */
  readonly rows: readonly ClockRow[];
  /** Seconds, closing included. */
  readonly total: number;
  /** An item's name, without side and time. */
  readonly nameOf: (item: PlanItem) => string;
}

/** Columns in order of time, without overlaps. An opening or closing without time has no column. */
export function laneColumns({ plan, rows, total, nameOf }: ColumnsInput): LaneColumn[] {
  const opened = rows[0]?.transitionFrom ?? total;
  const worked = rows.at(-1)?.end ?? total;
  let number = 0;
  const timed = plan.items.flatMap((item, i): LaneColumn[] => {
    const row = rows[i];
    if (item.kind === "heading" || row === undefined) return [];
    if (item.kind === "move") number += 1;
    const times = { gapFrom: row.transitionFrom, from: row.start, to: row.end };
    const { id, kind } = item;
    const side = kind === "move" && item.side !== "both" ? `, ${sideWords(item.side)}` : "";
    const name = `${nameOf(item)}${side}`;
    return [{ key: id, item: id, kind, number: kind === "move" ? number : 0, name, ...times }];
  });
  const edge = (key: string, kind: "opening" | "closing", from: number, to: number): LaneColumn[] =>
    to > from ? [{ key, item: null, kind, number: 0, name: kind, gapFrom: from, from, to }] : [];
  return [...edge(OPENING_ID, "opening", 0, opened), ...timed, ...edge(CLOSING_ID, "closing", worked, total)];
}

/** A column with its index. */
export interface PlacedColumn {
  readonly column: LaneColumn;
  readonly at: number;
}

/** The cell of a column. With `change`, it includes the change into the item. */
export function cellOf({ column, at }: PlacedColumn, say: string, change = false): ClassCell {
  const { key, item, name, gapFrom, from, to } = column;
  return { key, item, name, first: at, last: at, from: change ? gapFrom : from, to, say };
}
