/**
 * Reads a pasted list for one studio: rows, what each says, and from which characters. Pure; bounded in size and time.
 * `judge.ts` then decides what each row becomes.
 */

import { foldText } from "#lib/library/fold.ts";
import { nameIndexOf } from "../library/name-index.ts";
import { areNumbers, type ClockMark, clockMark, countsUp } from "./class-clock.ts";
import { cleanText } from "./clean.ts";
import { headerColumns, isHeader } from "./header.ts";
import { MAX_ROWS, MAX_TEXT, tooLongWords, tooManyRows } from "./limits.ts";
import { LIST_SENTENCES } from "./paste-words.ts";
import { type RowReader, readPastedRow } from "./read-row.ts";
import { bulletLength } from "./signs.ts";
import { splitRows } from "./split.ts";
import { springVocabulary } from "./spring-vocabulary.ts";
import type { PasteContext, PastedColumn, PasteReading, RowReading, SplitRow, TimeFound } from "./types.ts";

/** Rows above the headings that may hold a title. */
const TITLE_ROWS = 3;

/** Reads the text for the studio's library and springs. A text too long to be a list is refused in one sentence. */
export function readPaste(pasted: string, context: Pick<PasteContext, "moves" | "equipment">): PasteReading {
  if (pasted.length > MAX_TEXT) return { ok: false, say: tooLongWords(pasted.length) };
  const text = cleanText(pasted);
  const { springs } = context.equipment;
  const labels = springs.map((s) => s.label);
  const split = splitRows(text, labels);
  const { columns, rows } = withoutHeader(
    split.rows,
    labels,
    springs.map((s) => s.id),
  );
  const kept = rows.slice(0, MAX_ROWS);
  const marks = kept.map((row) => markOf(row, columns));
  const clocked = countsUp(marks);
  const reader: RowReader = {
    library: nameIndexOf(context.moves),
    springs: springVocabulary(springs),
    columns,
    clocked,
    numbered: columns.length === 0 && split.form !== "lines" && areNumbers(kept.map((r) => r.cells[0]?.text ?? "")),
  };
  const read = kept.map((row) => readPastedRow(row, text, reader));
  const timed = clocked ? read.map((row, i) => withClock(row, marks, i)) : read;
  return {
    ok: true,
    form: split.form,
    rows: withKeys(withBlocks(timed, kept, columns)),
    remarks: remarksOn({ columns, clocked, rows: rows.length, numbered: reader.numbered, read }),
  };
}

function withoutHeader(rows: readonly SplitRow[], labels: readonly string[], ids: readonly string[]) {
  const texts = (row: SplitRow) => row.cells.map((cell) => cell.text.trim().replace(/^\*\*(.*)\*\*$/, "$1"));
  const at = rows.slice(0, TITLE_ROWS).findIndex((row) => isHeader(texts(row), labels));
  const header = rows[at];
  if (!header) return { columns: [], rows };
  return { columns: headerColumns(texts(header), labels, ids), rows: rows.filter((_, i) => i !== at) };
}

function markOf(row: SplitRow, columns: readonly PastedColumn[]): ClockMark | null {
  const at = columns.findIndex((c) => c.role === "clock");
  if (at >= 0) return clockMark(row.cells[at]?.text ?? "");
  const first = row.cells.find((cell) => cell.text.trim() !== "")?.text ?? "";
  return columns.length > 0 ? null : clockMark(first.slice(bulletLength(first)));
}

type Row = Omit<RowReading, "key">;

/** A row without a length of its own lasts until the next clock mark. */
function withClock(row: Row, marks: readonly (ClockMark | null)[], i: number): Row {
  const mark = marks[i];
  if (!mark || row.times.length > 0) return row;
  const next = mark.end ?? marks.slice(i + 1).find((m) => m !== null)?.start;
  if (next === undefined || next <= mark.start) return row;
  const time: TimeFound = { seconds: next - mark.start, how: "clock", text: row.typed.trim().split(/\s/)[0] ?? "" };
  return { ...row, times: [time] };
}

/** A column of blocks adds a heading before each row where it changes. */
function withBlocks(rows: readonly Row[], split: readonly SplitRow[], columns: readonly PastedColumn[]): Row[] {
  const at = columns.findIndex((c) => c.role === "block");
  if (at < 0) return [...rows];
  let before = "";
  return rows.flatMap((row, i) => {
    const cell = split[i]?.cells[at];
    const title = cell?.text.trim() ?? "";
    if (!cell || title === "" || foldText(title) === before) return [row];
    before = foldText(title);
    return [headingRow(row, { from: cell.from, to: cell.to, title }), row];
  });
}

function headingRow(row: Row, cell: { from: number; to: number; title: string }): Row {
  return {
    line: row.line,
    from: cell.from,
    to: cell.to,
    typed: cell.title,
    signs: ["heading"],
    name: cell.title,
    match: { how: "none", near: [] },
    times: [],
    sides: [],
    springs: { counts: {}, unknown: [], none: false, notes: [] },
    words: "",
    wordsAreNotes: false,
    pieces: [],
  };
}

/**
 * A row's key is its own words and which of several equal rows it is, so that it stays the same while other rows are
 * typed.
 */
function withKeys(rows: readonly Row[]): RowReading[] {
  const seen = new Map<string, number>();
  return rows.map((row) => {
    const words = `${row.signs.includes("heading") ? "#" : ""}${row.typed.replace(/\s+/g, " ").trim().toLowerCase()}`;
    const nth = (seen.get(words) ?? 0) + 1;
    seen.set(words, nth);
    return { ...row, key: `${words}\n${nth}` };
  });
}

interface Seen {
  readonly columns: readonly PastedColumn[];
  readonly clocked: boolean;
  readonly numbered: boolean;
  readonly rows: number;
  readonly read: readonly Row[];
}

function remarksOn({ columns, clocked, numbered, rows, read }: Seen): string[] {
  const remarks: string[] = [];
  const others = columns.flatMap((c) => (c.role === "other" && c.title !== "" ? [c.title] : []));
  if (columns.length > 0) remarks.push(LIST_SENTENCES.headings);
  if (others.length > 0) remarks.push(LIST_SENTENCES.otherColumns(others));
  if (read.some((row) => row.times.some((time) => time.how === "column"))) {
    remarks.push(LIST_SENTENCES.timeColumn);
  }
  if (clocked) remarks.push(LIST_SENTENCES.clocked);
  if (numbered) remarks.push(LIST_SENTENCES.numbered);
  if (rows > MAX_ROWS) remarks.push(tooManyRows(rows));
  return remarks;
}
