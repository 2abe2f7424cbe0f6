/**
 * Splits pasted text of any form into rows and cells: lines (cells separated by two or more spaces), copied spreadsheet
 * cells (tabs), a table drawn with bars, or a file with commas or semicolons.
 */
import { splitDelimited } from "./delimited.ts";
import { isHeader } from "./header.ts";
import type { Form, PastedCell, SplitRow } from "./types.ts";

/** How many lines are looked at to tell the form. */
const SAMPLE = 60;

/**
 * Rows that hold anything; a line that only draws a rule does not count. `text` is clean; `springs` are the room's
 * spring labels.
 */
export function splitRows(text: string, springs: readonly string[]): { form: Form; rows: SplitRow[] } {
  const form = formOf(text, springs);
  const rows = form === "lines" || form === "pipes" ? splitLines(text, form) : splitDelimited(text, DELIMITERS[form]);
  return { form, rows: rows.map(trimmed).filter((row) => row.cells.some((cell) => !isBlank(cell.text))) };
}

const DELIMITERS = { tabs: "\t", commas: ",", semicolons: ";" } as const;

function formOf(text: string, springs: readonly string[]): Form {
  const lines = sampleLines(text);
  const share = (has: (line: string) => boolean) => lines.filter(has).length / Math.max(1, lines.length);
  if (share((l) => l.trim().includes("\t")) >= 0.3) return "tabs";
  if (share((l) => /^\s*\||\s\|\s/.test(l)) >= 0.5) return "pipes";
  for (const form of ["semicolons", "commas"] as const) {
    const rows = splitDelimited(lines.join("\n"), DELIMITERS[form]).map((row) => row.cells.map((c) => c.text.trim()));
    const quoted = form === "commas" ? /(^|,)\s*"/ : /(^|;)\s*"/;
    const wide = rows.filter((cells) => cells.length > 1).length / Math.max(1, rows.length);
    if (wide < 0.5) continue;
    if (rows.slice(0, 3).some((cells) => isHeader(cells, springs)) || share((l) => quoted.test(l)) >= 0.2) return form;
  }
  return "lines";
}

function sampleLines(text: string): string[] {
  const lines: string[] = [];
  for (let at = 0; at < text.length && lines.length < SAMPLE; ) {
    const end = text.indexOf("\n", at);
    const line = text.slice(at, end < 0 ? undefined : end);
    if (!isBlank(line)) lines.push(line);
    at = end < 0 ? text.length : end + 1;
  }
  return lines;
}

function splitLines(text: string, form: "lines" | "pipes"): SplitRow[] {
  let from = 0;
  return text.split("\n").flatMap((line, i) => {
    const row = { line: i + 1, from, to: from + line.length };
    from += line.length + 1;
    if (isBlank(line)) return [];
    const parts = form === "pipes" && line.includes("|") ? barCells(line, row.from) : spacedCells(line, row.from);
    return { ...row, cells: parts };
  });
}

function barCells(line: string, offset: number): PastedCell[] {
  const start = /^\s*\|?/.exec(line)?.[0].length ?? 0;
  const end = line.length - (/\|?\s*$/.exec(line)?.[0].length ?? 0);
  return partedBy(line.slice(start, Math.max(start, end)), /\|/g, offset + start);
}

const spacedCells = (line: string, offset: number): PastedCell[] => {
  const start = line.length - line.trimStart().length;
  return partedBy(line.trim(), /\t+| {2,}/g, offset + start);
};

function partedBy(text: string, parting: RegExp, offset: number): PastedCell[] {
  const cells: PastedCell[] = [];
  let from = 0;
  const push = (to: number) => cells.push({ text: text.slice(from, to), from: offset + from, to: offset + to });
  for (const m of text.matchAll(parting)) {
    push(m.index);
    from = m.index + m[0].length;
  }
  push(text.length);
  return cells;
}

function trimmed(row: SplitRow): SplitRow {
  const cells = row.cells.map((cell) => {
    const start = cell.text.length - cell.text.trimStart().length;
    const text = cell.text.trim();
    if (cell.skips || text.length === cell.text.length) return cell;
    return { text, from: cell.from + start, to: cell.from + start + text.length };
  });
  return { ...row, cells };
}

/** Empty, or only signs that draw a line. */
const isBlank = (text: string): boolean => /^[\s\-=_*|.#~+:–—•·"]*$/.test(text);
