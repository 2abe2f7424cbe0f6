/** Reads a table's file row by row, and says where one does not fit. */
import { closeSync, openSync, readSync } from "node:fs";
import { StringDecoder } from "node:string_decoder";
import type { Cell, TableColumn, TableRow } from "#db/file/table-rows.ts";
import { StudioFilesRefused } from "./refused.ts";

const AT_ONCE = 256 * 1024;

/** The rows of `file`, checked against the columns. `path`: how a refusal names it. Throws StudioFilesRefused. */
export function* rowsOfFile(file: string, path: string, columns: readonly TableColumn[]): Generator<TableRow> {
  const byName = new Map(columns.map((column) => [column.name, column]));
  let number = 0;
  for (const line of linesOf(file)) {
    number++;
    const fail = (why: string) =>
      new StudioFilesRefused(`${path}, line ${number}: ${why}. Nothing was changed. Export the studio again.`);
    yield rowOf(line, byName, fail);
  }
}

function* linesOf(file: string): Generator<string> {
  const handle = openSync(file, "r");
  const decoder = new StringDecoder("utf8");
  const buffer = Buffer.alloc(AT_ONCE);
  let rest = "";
  try {
    for (let got = readSync(handle, buffer); got > 0; got = readSync(handle, buffer)) {
      const lines = (rest + decoder.write(buffer.subarray(0, got))).split("\n");
      rest = lines.pop() ?? "";
      yield* lines;
    }
    rest += decoder.end();
    if (rest !== "") yield rest;
  } finally {
    closeSync(handle);
  }
}

type Fail = (why: string) => StudioFilesRefused;

function rowOf(line: string, columns: ReadonlyMap<string, TableColumn>, fail: Fail): TableRow {
  const value = parsed(line);
  if (typeof value !== "object" || value === null || Array.isArray(value)) throw fail("this is not a row");
  const given = value as Readonly<Record<string, unknown>>;
  const unknown = Object.keys(given).find((name) => !columns.has(name));
  if (unknown !== undefined) throw fail(`"${unknown}" is unknown to this version of Springline`);
  const row: Record<string, Cell> = {};
  for (const column of columns.values()) {
    if (Object.hasOwn(given, column.name)) row[column.name] = cellOf(given[column.name], column, fail);
    else if (!column.optional) throw fail(`"${column.name}" is missing`);
  }
  return row;
}

function cellOf(value: unknown, { name, type, notNull }: TableColumn, fail: Fail): Cell {
  if (value === null && !notNull) return null;
  if (type === "INTEGER" && Number.isSafeInteger(value)) return value as number;
  if (type === "TEXT" && typeof value === "string") {
    if (name.endsWith("_json") && parsed(value) === undefined) throw fail(`"${name}" is not JSON`);
    return value;
  }
  if (type === "BLOB" && typeof value === "string") {
    const bytes = Buffer.from(value, "base64");
    if (bytes.toString("base64") === value) return bytes;
  }
  throw fail(`"${name}" does not fit`);
}

/** Undefined for what is not JSON. */
function parsed(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}
