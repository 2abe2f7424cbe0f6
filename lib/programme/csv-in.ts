/** A spreadsheet's table read as classes of one month. Says by line what it could not read or match. Never throws. */
import Papa from "papaparse";
import { isDate, minuteOfDay, monthOf } from "#lib/calendar/days.ts";
import type { MonthSlot } from "#lib/month/types.ts";
import { columnsIn, type ReadColumn, UNDERSTOOD } from "./csv-columns.ts";
import { type NamesKnown, nameKey } from "./csv-names.ts";
import { BETWEEN_GROUPS, withoutApostrophe } from "./csv-out.ts";
import { minutesIn, spanIn, tableTimeIn } from "./csv-times.ts";
import { SLOT_MINUTES } from "./layout.ts";

/** A class of the table. Themes and groups that the month does not have yet are named, to be made. */
export interface CsvClass extends Omit<MonthSlot, "id"> {
  readonly newTheme?: string;
  readonly newRegulars?: readonly string[];
}

export type CsvRead =
  | {
      readonly ok: true;
      readonly classes: readonly CsvClass[];
      readonly notes: readonly string[];
      /** A sentence for each line that is no class; it names the line. */
      readonly unread: readonly string[];
    }
  /** Nothing can be taken; each sentence names its line. */
  | { readonly ok: false; readonly say: readonly string[] };

const MOST_SAID = 20;
/** Twice what a month holds, for lines that stand there already. What is longer is refused before it is read. */
const MOST_LINES = 2000;
/** Of a cell that is quoted back. */
const MOST_QUOTED = 40;

export function readMonthCsv(text: string, month: string, names: NamesKnown): CsvRead {
  const { data } = Papa.parse<string[]>(text.replace(/^\uFEFF/, ""), {
    delimitersToGuess: [",", ";", "\t"],
    preview: MOST_LINES + 2,
  });
  if (data.length > MOST_LINES + 1)
    return {
      ok: false,
      say: [`The table has more than ${MOST_LINES} lines. Bring the classes of one month in at a time.`],
    };
  // A line's number is that of a spreadsheet's row, so empty ones are counted, too.
  const lines = data.flatMap((cells, i) => (cells.some((cell) => cell.trim() !== "") ? [{ cells, line: i + 1 }] : []));
  const [head, ...rest] = lines;
  if (!head || rest.length === 0)
    return { ok: false, say: ["The table has no lines. The first line names the columns."] };
  const { columns, strange } = columnsIn(head.cells);
  const rows = rest.map(({ cells, line }) => new Row(cells, columns, line));
  const lacking = columnsLacking(columns, rows);
  if (lacking.length > 0) return { ok: false, say: [lackingWords(head.line, lacking, strange)] };
  const read = rows.map((row) => readRow(row, month, names));
  const unread = read.flatMap((one) => (one.ok ? [] : [one.say]));
  const classes = read.flatMap((one) => (one.ok ? [one.class] : []));
  if (classes.length === 0) return { ok: false, say: atMost(unread) };
  const left = strange.length > 0 ? [`Not taken: the columns ${strange.join(", ")}. ${UNDERSTOOD}`] : [];
  return { ok: true, classes, unread, notes: [...left, ...read.flatMap((one) => (one.ok ? one.notes : []))] };
}

/** The first of many sentences, and how many more there are. */
export const atMost = (said: readonly string[]): string[] =>
  said.length <= MOST_SAID ? [...said] : [...said.slice(0, MOST_SAID), `And ${said.length - MOST_SAID} lines more.`];

/** Minutes may be a column, come of an end, or of a time such as 18:00–19:00. */
function columnsLacking(columns: readonly (ReadColumn | undefined)[], rows: readonly Row[]): ReadColumn[] {
  const lengths = columns.includes("minutes") || columns.includes("end");
  const long = lengths || rows.some((row) => spanIn(row.of("start").trim()).end !== undefined);
  return [
    ...(["date", "start"] as const).filter((column) => !columns.includes(column)),
    ...(long ? [] : ["minutes" as const]),
  ];
}

function lackingWords(line: number, lacking: readonly ReadColumn[], strange: readonly string[]): string {
  const not = strange.length > 0 ? ` Not understood: ${strange.map(quoted).join(", ")}.` : "";
  return `Line ${line}: no column is called ${lacking.join(", ")}.${not} ${UNDERSTOOD}`;
}

const quoted = (cell: string): string => `“${cell.length > MOST_QUOTED ? `${cell.slice(0, MOST_QUOTED)}…` : cell}”`;

class Row {
  constructor(
    private readonly cells: readonly string[],
    private readonly columns: readonly (ReadColumn | undefined)[],
    readonly line: number,
  ) {}
  of(column: ReadColumn): string {
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
  const when = timesIn(row);
  if (typeof when === "string") return refuse(when);
  const notes: string[] = [];
  const found = (column: "room" | "coach" | "plan"): string | undefined => {
    const typed = row.of(column).trim();
    const id = names[column].get(nameKey(typed));
    if (typed !== "" && id === undefined) notes.push(`Line ${row.line}: ${notFound(column, typed, names)}`);
    return id;
  };
  const [room, coach, plan] = [found("room"), found("coach"), found("plan")];
  const note = row.of("note");
  const people = row.of("people").trim();
  const counted = /^\d{1,3}$/.test(people);
  if (people !== "" && !counted)
    notes.push(`Line ${row.line}: ${quoted(people)} is no number of people, so none is set.`);
  return {
    ok: true,
    notes,
    class: {
      ...{ date: date.date, ...when },
      ...(room === undefined ? {} : { room }),
      ...(coach === undefined ? {} : { coach }),
      ...(plan === undefined ? {} : { plan }),
      ...(note === "" ? {} : { note }),
      ...(counted ? { people: Number(people) } : {}),
      ...themeIn(row.of("theme").trim(), names),
      ...regularsIn(row.of("regulars").trim(), names),
    },
  };
}

function notFound(column: "room" | "coach" | "plan", typed: string, names: NamesKnown): string {
  const several = column === "coach" ? names.several.get(nameKey(typed)) : undefined;
  if (several) return `${quoted(typed)} could be ${several.join(" or ")}, so the class has no coach.`;
  return `the studio has no ${column} ${quoted(typed)}, so the class has none.`;
}

const DAY_MINUTES = 24 * 60;

/** Start and length, or what is wrong with them. */
function timesIn(row: Row): Pick<CsvClass, "start" | "minutes"> | string {
  const typed = { start: row.of("start").trim(), end: row.of("end").trim(), minutes: row.of("minutes").trim() };
  const span = spanIn(typed.start);
  if (span.start === undefined) return `${quoted(typed.start)} is no time. Write it as 07:30.`;
  const end = tableTimeIn(typed.end) ?? span.end;
  if (typed.minutes === "" && typed.end !== "" && end === undefined)
    return `${quoted(typed.end)} is no time. Write it as 07:30.`;
  const long = typed.minutes === "" && end !== undefined ? between(span.start, end) : minutesIn(typed.minutes);
  if (long !== undefined && long >= SLOT_MINUTES.min && long <= SLOT_MINUTES.max)
    return { start: span.start, minutes: long };
  const said = typed.minutes === "" && end !== undefined ? `${span.start} to ${end}` : typed.minutes;
  return `${quoted(said)} is no length. Write whole minutes from ${SLOT_MINUTES.min} to ${SLOT_MINUTES.max}.`;
}

/** An end before its start is on the next day. */
const between = (start: string, end: string): number =>
  (minuteOfDay(end) - minuteOfDay(start) + DAY_MINUTES) % DAY_MINUTES;

function themeIn(typed: string, { theme }: NamesKnown): Pick<CsvClass, "theme" | "newTheme"> {
  if (typed === "") return {};
  const id = theme.get(nameKey(typed));
  return id === undefined ? { newTheme: typed } : { theme: id };
}

function regularsIn(typed: string, { regulars }: NamesKnown): Pick<CsvClass, "regulars" | "newRegulars"> {
  if (typed === "") return {};
  const whole = regulars.get(nameKey(typed));
  const parts = whole === undefined ? typed.split(BETWEEN_GROUPS.trim()).map((part) => part.trim()) : [typed];
  const known = parts.flatMap((part) => regulars.get(nameKey(part)) ?? []);
  const strange = parts.filter((part) => part !== "" && !regulars.has(nameKey(part)));
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
