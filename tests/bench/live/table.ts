/** One table for all live works: each server's figure, its ratio to the stock server, and the target. */
import type { Target } from "./work.ts";

export interface Row {
  readonly label: string;
  readonly stock: number;
  readonly hocuspocus: number;
  readonly own: number;
  readonly target?: Target;
}

const COLUMNS = ["stock", "Hocuspocus", "this", "this/stock"] as const;
const LABEL = 36;
const CELL = 11;

const figure = (value: number): string => {
  if (Number.isNaN(value)) return "–";
  return value >= 100 ? value.toFixed(0) : value >= 10 ? value.toFixed(1) : value.toFixed(2);
};

function reached(row: Row, { kind, value }: Target): boolean {
  if (kind === "ratio") return row.own / row.stock <= value;
  return kind === "most" ? row.own <= value : row.own >= value;
}

const wordsOf = ({ kind, value }: Target): string =>
  kind === "ratio" ? `at most ${value} times stock` : `at ${kind === "most" ? "most" : "least"} ${value}`;

/** True when every target is met. */
export function showRows(rows: readonly Row[]): boolean {
  console.log([" ".repeat(LABEL), ...COLUMNS.map((name) => name.padStart(CELL))].join(""));
  for (const row of rows) {
    const ratio = row.stock === 0 ? Number.NaN : row.own / row.stock;
    const cells = [row.stock, row.hocuspocus, row.own, ratio].map((value) => figure(value).padStart(CELL));
    const { target } = row;
    const verdict = target ? `  ${wordsOf(target)}: ${reached(row, target) ? "met" : "missed"}` : "";
    console.log(`${row.label.padEnd(LABEL)}${cells.join("")}${verdict}`);
  }
  return rows.every((row) => !row.target || reached(row, row.target));
}
