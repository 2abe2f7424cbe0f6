/**
 * Reads one row: every reader takes the characters it understands; what is left is the name of the move and words left
 * over. Nothing is decided here that a person should decide; `judge.ts` says what is in doubt.
 */

import { foldText } from "#lib/library/fold.ts";
import type { NameIndex } from "../library/name-index.ts";
import { clockMark } from "./class-clock.ts";
import { cleanText } from "./clean.ts";
import { offsetIn } from "./delimited.ts";
import { RowField } from "./field.ts";
import { MAX_CELLS, MAX_ROW } from "./limits.ts";
import { exactRun, type NameStretch, nameStretches, type PickedName, pickName } from "./pick-name.ts";
import { readReps } from "./read-reps.ts";
import { readFacing, readOffset, readSides } from "./read-side.ts";
import {
  noSprings,
  readInitials,
  readLabelStretch,
  readNoneCell,
  readSpringCell,
  readSprings,
  springsFound,
} from "./read-springs.ts";
import { takeTimesFrom } from "./read-time.ts";
import { bulletLength, signsOf } from "./signs.ts";
import type { SpringVocabulary } from "./spring-vocabulary.ts";
import type { PastedCell, PastedColumn, PastedPiece, RowReading, SplitRow, TimeFound } from "./types.ts";

/** What is needed to read a row. */
export interface RowReader {
  readonly library: NameIndex;
  readonly springs: SpringVocabulary;
  /** By position; empty where the list has no headings. */
  readonly columns: readonly PastedColumn[];
  /** Rows begin with the clock of the class. */
  readonly clocked: boolean;
  /** First cells number the rows. */
  readonly numbered: boolean;
}

type Read = { -readonly [K in "times" | "sides" | "facing" | "offsetMm" | "reps"]: RowReading[K] };
interface Open extends Read {
  springs: ReturnType<typeof noSprings>;
  times: TimeFound[];
  sides: RowReading["sides"][number][];
}

interface Part {
  readonly cell: PastedCell;
  readonly field: RowField;
  readonly column: PastedColumn;
}

const FREE: PastedColumn = { role: "free" };

/** Reads one row. `text` is the clean text that the row's offsets refer to. */
export function readPastedRow(row: SplitRow, text: string, by: RowReader): Omit<RowReading, "key"> {
  const into: Open = {
    times: [],
    sides: [],
    facing: undefined,
    offsetMm: undefined,
    reps: undefined,
    springs: noSprings(),
  };
  const parts = partsOf(row, by);
  for (const part of parts) readColumn(part, into, by);
  const free = parts.filter((p) => p.column.role === "free" || p.column.role === "move").map((p) => p.field);
  readFree(free, into, by);
  const named = parts.filter((p) => p.column.role === "move").map((p) => p.field);
  const picked = pickName((named.length > 0 ? named : free).flatMap(nameStretches), by.library);
  const others = parts
    .filter((p) => !(named.length > 0 ? named : free).includes(p.field))
    .flatMap((p) => nameStretches(p.field));
  return { ...frameOf(row, text), ...wordsOfRow({ row, parts, picked, others }), ...found(into) };
}

function found(into: Open) {
  const { facing, offsetMm, reps } = into;
  return {
    times: into.times,
    sides: into.sides,
    springs: springsFound(into.springs),
    ...(facing === undefined ? {} : { facing }),
    ...(offsetMm === undefined ? {} : { offsetMm }),
    ...(reps === undefined ? {} : { reps }),
  };
}

function frameOf(row: SplitRow, text: string) {
  const filled = row.cells.filter((cell) => cell.text.trim() !== "");
  const [first, last] = [filled[0]?.from ?? row.from, filled.at(-1)?.to ?? row.to];
  const [from, to] = [text[first - 1] === '"' ? first - 1 : first, text[last] === '"' ? last + 1 : last];
  const end = Math.min(to, from + MAX_ROW);
  return { line: row.line, from, to: end, typed: cleanText(text.slice(from, end)).replaceAll("\n", " ") };
}

function partsOf(row: SplitRow, by: RowReader): Part[] {
  let room = MAX_ROW;
  const parts = row.cells.slice(0, MAX_CELLS).map((cell, i): Part => {
    const text = cell.text.replaceAll("\n", " ").slice(0, room);
    room -= text.length;
    const column = by.columns[i] ?? (by.numbered && i === 0 ? { role: "order" } : FREE);
    return { cell, column, field: new RowField(text) };
  });
  const first = parts.find((p) => p.field.text.trim() !== "");
  if (first) passOverHead(first, by);
  return parts;
}

function passOverHead({ field, column }: Part, by: RowReader): void {
  if (column.role !== "free" && column.role !== "move") return;
  const bullet = bulletLength(field.text);
  if (bullet > 0) field.take(0, bullet, "passed-over");
  const clock = by.clocked ? clockMark(field.text.slice(bullet)) : null;
  if (clock) field.take(bullet, bullet + clock.length, "passed-over");
}

/** A cell whose column says what it holds. */
function readColumn({ field, column, cell }: Part, into: Open, by: RowReader): void {
  const all = (of: PastedPiece["of"]) => field.text !== "" && field.take(0, field.text.length, of);
  const initials = by.springs.initials;
  if (column.role === "order" || column.role === "clock" || column.role === "block") all("passed-over");
  else if (column.role === "springs") readSpringCell(field, by.springs, into.springs);
  else if (column.role === "side") into.sides.push(...readSides(field, true, null));
  else if (column.role === "time") {
    const { perNumber = 1 } = column;
    into.times.push(...takeTimesFrom(field, { perNumber, bare: column.perNumber ? "said" : "column", initials }));
  } else if (column.role === "spring" && cell.text.trim() !== "") readSpringCount(column.spring, field, into);
  else if (column.role === "offset") {
    into.offsetMm =
      readOffset(new RowField(`offset ${field.text} ${/[a-z]/i.test(field.text) ? "" : "mm"}`)) ?? into.offsetMm;
    if (into.offsetMm !== undefined) all("offset");
  }
}

/** A column for one spring: a count, or a mark that means one; a dash means the same as an empty cell. */
function readSpringCount(spring: string, field: RowField, into: Open): void {
  const text = field.text.trim();
  field.take(0, field.text.length, "springs");
  if (/^[-–—.]*$/.test(text)) return;
  const count = /^\d{1,2}$/.test(text) ? Number(text) : /^[x×✓✔]$/i.test(text) ? 1 : null;
  if (count === null) into.springs.unknown.push({ word: foldText(text), count: 1 });
  else into.springs.counts[spring] = (into.springs.counts[spring] ?? 0) + count;
}

/** Cells without a column of their own: springs, offset, facing, times, initials, sides, repetitions, bare numbers. */
function readFree(fields: readonly RowField[], into: Open, by: RowReader): void {
  const { springs, library } = by;
  for (const field of fields) {
    readSprings(field, springs, into.springs);
    into.offsetMm ??= readOffset(field);
    into.facing ??= readFacing(field);
    into.times.push(...takeTimesFrom(field, { initials: springs.initials }));
  }
  // A separate cell that says "none" means springs, whatever its column; the name was taken first.
  for (const field of fields.slice(1)) readNoneCell(field, into.springs);
  for (const field of fields) readInitials(field, springs, into.springs, into.times.length > 0);
  for (const field of fields) {
    const kept = exactRun(nameStretches(field), library);
    const stretches = kept ? nameStretches(field).slice(kept.from, kept.to) : [];
    const span = kept ? { from: stretches[0]?.from ?? 0, to: stretches.at(-1)?.to ?? 0 } : null;
    into.sides.push(...readSides(field, false, span));
  }
  if (into.times.length === 0) for (const field of fields) into.reps ??= readReps(field);
  if (into.times.length === 0 && into.reps === undefined) {
    for (const field of fields) into.times.push(...takeTimesFrom(field, { perNumber: 1, initials: springs.initials }));
  }
  for (const stretch of fields.flatMap(nameStretches).slice(1)) {
    readLabelStretch(stretch.field, stretch, springs, into.springs);
  }
}

interface Rest {
  readonly row: SplitRow;
  readonly parts: readonly Part[];
  readonly picked: PickedName;
  readonly others: readonly NameStretch[];
}

/** The name, the words left over, and the characters each part was read from. */
function wordsOfRow({ row, parts, picked, others }: Rest) {
  const rest = [...picked.rest, ...others];
  const partOf = (stretch: NameStretch) => parts.find((p) => p.field === stretch.field);
  const titled = (stretch: NameStretch) => {
    const column = partOf(stretch)?.column;
    return column?.role === "other" && column.title !== "" ? `${column.title}: ${stretch.text}` : stretch.text;
  };
  const words = rest.map(titled).join(", ");
  const place = (of: PastedPiece["of"]) => (stretch: NameStretch) => pieceOf(partOf(stretch)?.cell, stretch, of) ?? [];
  const pieces: PastedPiece[] = [
    ...parts.flatMap((p) => p.field.taken.flatMap((taken) => pieceOf(p.cell, taken, taken.of) ?? [])),
    ...picked.stretches.flatMap(place("move")),
    ...rest.flatMap(place("words")),
  ];
  return {
    name: picked.name,
    match: picked.match,
    words,
    wordsAreNotes: rest.length > 0 && rest.every((s) => partOf(s)?.column.role === "notes"),
    signs: signsOf(row, [picked.name, words].join(" ").trim()),
    pieces: pieces.sort((a, b) => a.from - b.from),
  };
}

function pieceOf(
  cell: PastedCell | undefined,
  span: { from: number; to: number },
  of: PastedPiece["of"],
): PastedPiece | null {
  return cell ? { from: offsetIn(cell, span.from), to: offsetIn(cell, span.to - 1) + 1, of } : null;
}
