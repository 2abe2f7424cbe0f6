/** A month's classes as a spreadsheet's table (RFC 4180), one line a class that takes place. */
import Papa from "papaparse";
import { expandMonth } from "#lib/month/expand.ts";
import type { MonthFile, MonthSlot } from "#lib/month/types.ts";
import { own } from "#lib/plan/lookup.ts";

export const CSV_COLUMNS = ["date", "start", "minutes", "room", "coach", "theme", "plan", "regulars", "note"] as const;
export type CsvColumn = (typeof CSV_COLUMNS)[number];

/** Between the groups of regulars of one class. */
export const BETWEEN_GROUPS = "; ";

export function monthToCsv(month: MonthFile): string {
  const classes = expandMonth(month).filter((slot) => slot.out !== true && slot.date >= month.dates.from);
  const rows = classes.map((slot) => cellsOf(slot, month).map(withApostrophe));
  return `${Papa.unparse([[...CSV_COLUMNS], ...rows], { newline: "\r\n" })}\r\n`;
}

function cellsOf(slot: MonthSlot, { rooms, coaches, themes, plans, regulars }: MonthFile): string[] {
  const name = <T>(
    map: Readonly<Record<string, T>> | undefined,
    id: string | null | undefined,
    of: (one: T) => string,
  ) => {
    const one = typeof id === "string" ? own(map, id) : undefined;
    return one === undefined ? "" : of(one);
  };
  return [
    slot.date,
    slot.start,
    String(slot.minutes),
    name(rooms, slot.room, (room) => room.name),
    name(coaches, slot.coach, (coach) => coach.name),
    name(themes, slot.theme, (theme) => theme.name),
    name(plans, slot.plan, (plan) => plan.title),
    (slot.regulars ?? []).map((id) => name(regulars, id, (group) => group.name)).join(BETWEEN_GROUPS),
    slot.note ?? "",
  ];
}

const FORMULA = /^'*[=+\-@\t\r]/;

/** A spreadsheet reads a cell that begins so as a formula, and may run it: an apostrophe makes it text. */
const withApostrophe = (cell: string): string => (FORMULA.test(cell) ? `'${cell}` : cell);

/** The cell as it was before it was withApostrophe. */
export const withoutApostrophe = (cell: string): string => (/^'+[=+\-@\t\r]/.test(cell) ? cell.slice(1) : cell);
