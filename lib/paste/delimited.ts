/**
 * Cells separated by commas, semicolons or tabs, quoted as in RFC 4180: a quoted cell may hold the delimiter, line ends
 * and doubled quotes. Spreadsheets copy their cells the same way with tabs. A quote that is never closed counts as an
 * ordinary character, so that an inch mark or a typo does not swallow the rest of the list.
 */
import type { PastedCell, SplitRow } from "./types.ts";

/** A quoted cell longer than this is taken to be a quote that was never closed. UTF-16 units. */
const MAX_QUOTED = 4000;

interface Quoted {
  readonly cell: PastedCell;
  /** Offset after the closing quote. */
  readonly end: number;
}

/** Splits clean text. Empty rows are kept so that lines can be counted. Linear in the length of the text. */
export function splitDelimited(text: string, delimiter: "," | ";" | "\t"): SplitRow[] {
  const rows: SplitRow[] = [];
  let cells: PastedCell[] = [];
  let line = 1;
  let rowLine = 1;
  let rowFrom = 0;
  let at = 0;
  while (at <= text.length) {
    const quoted = quotedCell(text, at, delimiter);
    const end = quoted?.end ?? endOfCell(text, at, delimiter);
    cells.push(quoted?.cell ?? { text: text.slice(at, end), from: at, to: end });
    line += quoted ? lineEnds(quoted.cell.text) : 0;
    if (text[end] === delimiter) {
      at = end + 1;
      continue;
    }
    rows.push({ line: rowLine, from: rowFrom, to: end, cells });
    cells = [];
    line++;
    rowLine = line;
    rowFrom = end + 1;
    at = end + 1;
  }
  return rows;
}

function endOfCell(text: string, at: number, delimiter: string): number {
  let end = at;
  while (end < text.length && text[end] !== delimiter && text[end] !== "\n") end++;
  return end;
}

/** The quoted cell that begins at `at`; spaces around its quotes are allowed. */
function quotedCell(text: string, at: number, delimiter: string): Quoted | null {
  let from = at;
  while (text[from] === " ") from++;
  if (text[from] !== '"') return null;
  from++;
  const skips: number[] = [];
  for (let close = text.indexOf('"', from); close >= 0 && close - from <= MAX_QUOTED; ) {
    if (text[close + 1] === '"') {
      skips.push(close);
      close = text.indexOf('"', close + 2);
      continue;
    }
    let end = close + 1;
    while (text[end] === " ") end++;
    const closed = end >= text.length || text[end] === delimiter || text[end] === "\n";
    return closed ? { cell: cellOf(text, from, close, skips), end } : null;
  }
  return null;
}

function cellOf(text: string, from: number, to: number, skips: readonly number[]): PastedCell {
  const inner = text.slice(from, to).replaceAll('""', '"');
  return { text: inner, from, to, ...(skips.length > 0 ? { skips } : {}) };
}

const lineEnds = (text: string): number => text.split("\n").length - 1;

/** The offset in the pasted text of the `index`th UTF-16 unit of a cell. */
export function offsetIn(cell: PastedCell, index: number): number {
  let offset = cell.from + index;
  for (const skip of cell.skips ?? []) if (skip < offset) offset++;
  return offset;
}
