/**
 * The headings of a table: which column holds the move, its time, springs, side or notes. Each has several wordings.
 */
import { foldText } from "#lib/library/fold.ts";
import { MAX_CELLS } from "./limits.ts";
import type { PastedColumn } from "./types.ts";

type Role = Exclude<PastedColumn["role"], "spring" | "other" | "free">;

const TITLES: readonly (readonly [Role, readonly string[]])[] = [
  ["move", ["move", "exercise", "name", "what", "movement", "exercise name", "move name", "drill", "item", "activity"]],
  [
    "time",
    ["time", "seconds", "secs", "sec", "s", "duration", "length", "minutes", "mins", "min", "work", "work time"],
  ],
  ["time", ["time under tension", "how long", "hold", "working time"]],
  [
    "springs",
    ["springs", "spring", "load", "resistance", "tension", "springs on", "spring setting", "setting", "weight"],
  ],
  ["side", ["side", "sides", "l r", "l/r", "left right", "leg", "arm", "side l r", "which side"]],
  ["notes", ["notes", "note", "cue", "cues", "comment", "comments", "remarks", "remark", "form", "say", "script"]],
  ["notes", ["cueing", "what to say", "coaching points", "teaching points", "form cues"]],
  ["block", ["block", "section", "part", "phase", "segment", "series", "group"]],
  ["clock", ["start", "at", "from", "clock", "starts", "start time", "begins", "elapsed", "running time"]],
  ["order", ["no", "nr", "order", "number", "row", "num", "step"]],
  ["offset", ["offset", "distance", "offset from anchor"]],
];

const ROLES: ReadonlyMap<string, Role> = new Map(
  TITLES.flatMap(([role, titles]) => titles.map((title): [string, Role] => [foldText(title), role])),
);

/** Whether these cells are headings: at least two known ones, at least one of them about the work, and no numbers. */
export function isHeader(cells: readonly string[], springs: readonly string[]): boolean {
  if (cells.length > MAX_CELLS) return false;
  const filled = cells.filter((cell) => cell.trim() !== "");
  if (filled.length < 2 || filled.some((cell) => cell.length > 40 || /\d/.test(cell))) return false;
  const columns = filled.map((cell) => columnOf(cell, springs));
  const known = columns.filter((c) => c.role !== "other");
  return known.length >= 2 && known.length * 2 >= filled.length && known.some((c) => WORK.has(c.role));
}

const WORK = new Set<PastedColumn["role"]>(["move", "time", "springs", "spring", "side"]);

/**
 * The columns of a header row, in order. Without a column of moves, unknown columns are read freely. `ids` are the
 * room's spring ids and `springs` its labels, in the same order.
 */
export function headerColumns(
  cells: readonly string[],
  springs: readonly string[],
  ids: readonly string[],
): PastedColumn[] {
  const columns = cells.map((cell) => columnOf(cell, springs));
  const hasMove = columns.some((c) => c.role === "move");
  return columns.map((column) => {
    if (column.role === "spring") return { role: "spring", spring: ids[springs.indexOf(column.spring)] ?? "" };
    return column.role === "other" && !hasMove ? { role: "free" } : column;
  });
}

function columnOf(cell: string, springs: readonly string[]): PastedColumn {
  const title = foldText(cell.replace(/[([{].*$/, ""));
  const label = springs.find((s) => foldText(s) === title || foldText(`${s} springs`) === title);
  if (label !== undefined && title !== "") return { role: "spring", spring: label };
  const role = /^\s*[#№]\s*$/.test(cell) ? "order" : ROLES.get(title);
  if (role === undefined) return { role: "other", title: cell.trim() };
  if (role === "time") return { role, ...unitOf(cell) };
  if (role === "offset") return { role, perNumber: /\bcm\b/i.test(cell) ? 10 : 1 };
  return { role };
}

function unitOf(cell: string): { perNumber?: number } {
  if (/\b(m|mins?|minutes?)\b/i.test(cell)) return { perNumber: 60 };
  return /\b(s|secs?|seconds?)\b/i.test(cell) ? { perNumber: 1 } : {};
}
