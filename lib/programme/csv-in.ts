/** A spreadsheet's table read as classes of one month. Says by line what it could not read or match. Never throws. */
import Papa from "papaparse";
import { isDate, isTime, monthOf } from "#lib/calendar/days.ts";
import type { MonthSlot } from "#lib/month/types.ts";
import { BETWEEN_GROUPS, CSV_COLUMNS, type CsvColumn, withoutApostrophe } from "./csv-out.ts";
import { SLOT_MINUTES } from "./layout.ts";

/** Ids by names in small letters; a name that two have is not in it. */
export type NamesKnown = Readonly<
  Record<"room" | "coach" | "theme" | "plan" | "regulars", ReadonlyMap<string, string>>
>;

/** A class of the table. Themes and groups that the month does not have yet are named, to be made. */
export interface CsvClass extends Omit<MonthSlot, "id"> {
  readonly newTheme?: string;
  readonly newRegulars?: readonly string[];
}

export type CsvRead =
  | { readonly ok: true; readonly classes: readonly CsvClass[]; readonly notes: readonly string[] }
  /** Nothing is taken; each sentence names its line. */
  | { readonly ok: false; readonly say: readonly string[] };

/** Other words that tables have for the columns. */
const COLUMN_NAMES: Readonly<Record<string, CsvColumn>> = {
  ...Object.fromEntries(CSV_COLUMNS.map((column) => [column, column])),
  ...{
    day: "date",
    time: "start",
    begins: "start",
    length: "minutes",
    duration: "minutes",
    group: "regulars",
    groups: "regulars",
  },
  ...{ notes: "note", class: "theme" },
};

const MOST_SAID = 20;
/** Twice what a month holds, for lines that stand there already. What is longer is refused before it is read. */
const MOST_LINES = 2000;
/** Of a cell that is quoted back. */
const MOST_QUOTED = 40;

export function readMonthCsv(text: string, month: string, names: NamesKnown): CsvRead {
  const { data } = Papa.parse<string[]>(text.replace(/^\uFEFF/, ""), {
    skipEmptyLines: "greedy",
    delimitersToGuess: [",", ";", "\t"],
    preview: MOST_LINES + 2,
  });
  const [head, ...rows] = data;
  if (!head || rows.length === 0)
    return { ok: false, say: ["The table has no lines. The first line names the columns."] };
  if (rows.length > MOST_LINES)
    return {
      ok: false,
      say: [`The table has more than ${MOST_LINES} lines. Bring the classes of one month in at a time.`],
    };
  const columns = head.map((name) => COLUMN_NAMES[name.trim().toLowerCase()]);
  const lacking = (["date", "start", "minutes"] as const).filter((column) => !columns.includes(column));
  if (lacking.length > 0)
    return {
      ok: false,
      say: [`Line 1: no column is called ${lacking.join(", ")}. Name the columns ${CSV_COLUMNS.join(", ")}.`],
    };
  const read = rows.map((cells, i) => readRow(new Row(cells, columns, i + 2), month, names));
  const say = read.flatMap((one) => (one.ok ? [] : [one.say]));
  if (say.length > 0) return { ok: false, say: say.slice(0, MOST_SAID) };
  const left = head.filter((_, i) => columns[i] === undefined).map((name) => name.trim());
  const notes = [
    ...(left.filter(Boolean).length > 0 ? [`Not taken: the columns ${left.filter(Boolean).join(", ")}.`] : []),
    ...read.flatMap((one) => (one.ok ? one.notes : [])),
  ];
  return { ok: true, classes: read.flatMap((one) => (one.ok ? [one.class] : [])), notes };
}

const quoted = (cell: string): string => `“${cell.length > MOST_QUOTED ? `${cell.slice(0, MOST_QUOTED)}…` : cell}”`;

class Row {
  constructor(
    private readonly cells: readonly string[],
    private readonly columns: readonly (CsvColumn | undefined)[],
    readonly line: number,
  ) {}
  of(column: CsvColumn): string {
    const cell = this.cells[this.columns.indexOf(column)];
    return cell === undefined ? "" : withoutApostrophe(cell);
  }
}

type RowRead =
  | { readonly ok: true; readonly class: CsvClass; readonly notes: readonly string[] }
  | { readonly ok: false; readonly say: string };

function readRow(row: Row, month: string, names: NamesKnown): RowRead {
  const refuse = (words: string): RowRead => ({ ok: false, say: `Line ${row.line}: ${words}` });
  const date = dateIn(row.of("date").trim(), month);
  if (!date.ok) return refuse(date.say);
  const start = row.of("start").trim().padStart(5, "0");
  if (!isTime(start)) return refuse(`${quoted(row.of("start"))} is no time. Write it as 07:30.`);
  const minutes = Number(row.of("minutes").trim());
  if (!Number.isInteger(minutes) || minutes < SLOT_MINUTES.min || minutes > SLOT_MINUTES.max)
    return refuse(
      `${quoted(row.of("minutes"))} is no length. Write whole minutes from ${SLOT_MINUTES.min} to ${SLOT_MINUTES.max}.`,
    );
  const notes: string[] = [];
  const found = (column: "room" | "coach" | "plan"): string | undefined => {
    const typed = row.of(column).trim();
    const id = names[column].get(typed.toLowerCase());
    if (typed !== "" && id === undefined)
      notes.push(`Line ${row.line}: the studio has no ${column} ${quoted(typed)}, so the class has none.`);
    return id;
  };
  const [room, coach, plan] = [found("room"), found("coach"), found("plan")];
  const note = row.of("note");
  return {
    ok: true,
    notes,
    class: {
      ...{ date: date.date, start, minutes },
      ...(room === undefined ? {} : { room }),
      ...(coach === undefined ? {} : { coach }),
      ...(plan === undefined ? {} : { plan }),
      ...(note === "" ? {} : { note }),
      ...themeIn(row.of("theme").trim(), names),
      ...regularsIn(row.of("regulars").trim(), names),
    },
  };
}

function themeIn(typed: string, { theme }: NamesKnown): Pick<CsvClass, "theme" | "newTheme"> {
  if (typed === "") return {};
  const id = theme.get(typed.toLowerCase());
  return id === undefined ? { newTheme: typed } : { theme: id };
}

function regularsIn(typed: string, { regulars }: NamesKnown): Pick<CsvClass, "regulars" | "newRegulars"> {
  if (typed === "") return {};
  const whole = regulars.get(typed.toLowerCase());
  const parts = whole === undefined ? typed.split(BETWEEN_GROUPS.trim()).map((part) => part.trim()) : [typed];
  const known = parts.flatMap((part) => regulars.get(part.toLowerCase()) ?? []);
  const strange = parts.filter((part) => part !== "" && !regulars.has(part.toLowerCase()));
  return {
    ...(known.length > 0 ? { regulars: [...new Set(known)] } : {}),
    ...(strange.length > 0 ? { newRegulars: [...new Set(strange)] } : {}),
  };
}

type DateRead = { readonly ok: true; readonly date: string } | { readonly ok: false; readonly say: string };

/**
 * YYYY-MM-DD, or the day before the month as DD/MM/YYYY. A date that is only in this month when read the other way round is refused:
 * whoever wrote it so may have written others so, too.
 */
function dateIn(typed: string, month: string): DateRead {
  const iso = /^\d{4}-\d{2}-\d{2}$/.test(typed) ? typed : undefined;
  const [, a = "", b = "", year = ""] = /^(\d{1,2})[/.](\d{1,2})[/.](\d{4})$/.exec(typed) ?? [];
  const two = (n: string) => n.padStart(2, "0");
  const date = iso ?? (year === "" ? "" : `${year}-${two(b)}-${two(a)}`);
  if (isDate(date) && monthOf(date) === month) return { ok: true, date };
  const turned = `${year}-${two(a)}-${two(b)}`;
  if (year !== "" && isDate(turned) && monthOf(turned) === month)
    return {
      ok: false,
      say: `“${typed}” could be day ${Number(b)} of month ${Number(a)} or the other way round. Write ${turned}.`,
    };
  if (!isDate(date))
    return { ok: false, say: `${quoted(typed)} is no date. Write it as ${month}-01 or as 31/12/2026.` };
  return { ok: false, say: `${date} is not a day of ${month}.` };
}
