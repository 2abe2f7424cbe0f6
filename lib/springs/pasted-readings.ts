/**
 * Readings copied from a spreadsheet or a message: two numbers a line, travel and force, in whatever units and with whatever
 * decimal sign. What is read is text still, with a point, so that the form can show it before it is taken. Pure.
 */
import type { ForceUnit } from "#lib/formats/formats.ts";
import type { TravelUnit } from "./readings.ts";

export interface PastedRow {
  /** Of the pasted text, from 1. */
  readonly line: number;
  /** As pasted. */
  readonly text: string;
  readonly travel: string;
  readonly force: string;
  /** Why it is no reading; null where it is one. */
  readonly say: string | null;
}
export interface PastedReadings {
  readonly rows: readonly PastedRow[];
  /** Null where neither names nor numbers tell. */
  readonly travelUnit: TravelUnit | null;
  readonly forceUnit: ForceUnit | null;
}

type Quantity = "travel" | "force";
interface Cell {
  /** With a point; null for no number. */
  readonly number: string | null;
  readonly unit: TravelUnit | ForceUnit | null;
}
interface Columns {
  readonly travel: number;
  readonly force: number;
}

const TRAVEL_UNIT: readonly (readonly [RegExp, TravelUnit])[] = [
  [/\b(mm|millimet(re|er)s?)\b/, "mm"],
  [/\b(cm|centimet(re|er)s?)\b/, "cm"],
  [/\b(in|inch|inches)\b|["″]/, "in"],
];
const FORCE_UNIT: readonly (readonly [RegExp, ForceUnit])[] = [
  [/\b(kgf?|kilo(gram)?s?|kilograms?-force|kp)\b/, "kgf"],
  [/\b(lbs?|lbf|pounds?|pounds?-force)\b/, "lbf"],
  [/\b(n|newtons?)\b/, "N"],
];
const TRAVEL_NAME = /travel|distance|extension|stretch|position|length|displacement/;
const FORCE_NAME = /force|load|scale|pull|weight|reading/;
const NUMBER = /[+-]?(?:\d[\d.,'’]*|[.,]\d+)/;

/** Bounded by the form, which takes a hundred readings; what is longer is said in words there. */
export function readPastedReadings(text: string): PastedReadings {
  const lines = text.split(/\r\n?|\n/).map((line, i) => ({ line: i + 1, text: line.trim() }));
  const filled = lines.filter(({ text: words }) => words !== "");
  const split = splitter(filled.map(({ text: words }) => words));
  const head = filled[0] && isHead(split(filled[0].text)) ? split(filled[0].text) : null;
  const body = (head ? filled.slice(1) : filled).map((at) => ({ ...at, cells: split(at.text).map(cellOf) }));
  const columns = columnsOf(
    head,
    body.map(({ cells }) => cells),
  );
  const rows = body.map(({ line, text: words, cells }) => ({ line, text: words, ...readingIn(cells, columns) }));
  const unit = <T extends TravelUnit | ForceUnit>(of: Quantity, known: readonly (readonly [RegExp, T])[]) =>
    unitIn(head?.[columns[of]] ?? "", known) ??
    commonUnit(
      body.map(({ cells }) => cells[columns[of]]?.unit ?? null),
      known,
    );
  const travelUnit = unit("travel", TRAVEL_UNIT);
  const forceUnit = unit("force", FORCE_UNIT);
  const other = ({ cells }: (typeof body)[number]) =>
    isOther(cells[columns.travel], travelUnit) || isOther(cells[columns.force], forceUnit);
  return {
    rows: rows.map((row, i) => {
      const from = body[i];
      return row.say === null && from && other(from) ? { ...row, say: OTHER_UNIT } : row;
    }),
    travelUnit,
    forceUnit,
  };
}

const OTHER_UNIT = "This line is in another unit than the others. Convert it first, or paste it by itself.";
const isOther = (cell: Cell | undefined, unit: string | null): boolean =>
  cell?.unit !== null && cell?.unit !== undefined && cell.unit !== unit;

/** How the lines are cut into cells: by tabs, semicolons, bars; else by number, with its unit; a comma with a space cuts too. */
function splitter(lines: readonly string[]): (line: string) => string[] {
  const sign = ["\t", ";", "|"].find((mark) => lines.filter((line) => line.includes(mark)).length > lines.length / 2);
  if (sign !== undefined)
    return (line) => {
      const cells = line.split(sign).map((cell) => cell.trim());
      return sign === "|" ? cells.filter((cell) => cell !== "") : cells;
    };
  // "10,4.2" and "10,42" of a comma-separated file: no line has a space between its numbers.
  const commas = lines.every((line) => /^[^,]+,[^,]+$/.test(line) && !/\d\s+\d/.test(line.replace(/,\s/g, ",")));
  if (commas) return (line) => line.split(",").map((cell) => cell.trim());
  return byNumber;
}

/** "10,5 cm 4,2 kg" as two cells; words before the first number are a cell of their own line. */
function byNumber(line: string): string[] {
  const found = [...line.matchAll(new RegExp(`${NUMBER.source}\\s*[^\\d\\s,;:=]*`, "g"))].map(([cell]) =>
    cell.replace(/[,.]$/, "").trim(),
  );
  return found.length > 0 ? found : line.split(/\s{2,}|,\s*|\s+(?=\p{L}+\s*[([])/u);
}

const isHead = (cells: readonly string[]): boolean =>
  cells.some((cell) => /\p{L}/u.test(cell)) && cells.every((cell) => !NUMBER.test(cell));

function cellOf(text: string): Cell {
  const [number] = NUMBER.exec(text) ?? [];
  const words = text.toLowerCase();
  const unit = unitIn(words, TRAVEL_UNIT) ?? unitIn(words, FORCE_UNIT);
  const rest = number === undefined ? text : text.replace(number, "");
  const strange = unit === null && /\p{L}/u.test(rest);
  return { number: number === undefined || strange ? null : plainFigure(number), unit };
}

/** Of two signs the last is the decimal one; one sign alone is, too: no travel or force here needs thousands. */
function plainFigure(number: string): string {
  const signs = number.replace(/['’]/g, "");
  const last = Math.max(signs.lastIndexOf(","), signs.lastIndexOf("."));
  if (last < 0) return signs;
  return `${signs.slice(0, last).replace(/[.,]/g, "") || "0"}.${signs.slice(last + 1)}`.replace(/\.$/, "");
}

function unitIn<T>(words: string, known: readonly (readonly [RegExp, T])[]): T | null {
  // A unit may stand against its number: "4.2kg".
  const apart = words.toLowerCase().replace(/(\d)(?=\p{L})/gu, "$1 ");
  return known.find(([pattern]) => pattern.test(apart))?.[1] ?? null;
}

/** The unit of most cells that have one of these. */
function commonUnit<T extends TravelUnit | ForceUnit>(
  units: readonly (TravelUnit | ForceUnit | null)[],
  known: readonly (readonly [RegExp, T])[],
): T | null {
  const counts = known.map(([, unit]) => [unit, units.filter((other) => other === unit).length] as const);
  const [most] = counts.filter(([, count]) => count > 0).sort((a, b) => b[1] - a[1]);
  return most?.[0] ?? null;
}

/** By the names above, then by units, else the first two columns that hold numbers: travel, force. */
function columnsOf(head: readonly string[] | null, rows: readonly (readonly Cell[])[]): Columns {
  const width = Math.max(0, ...rows.map((cells) => cells.length));
  const places = Array.from({ length: width }, (_, i) => i);
  const cellsIn = (i: number) => rows.flatMap((cells) => cells[i] ?? []);
  const says = (i: number, name: RegExp, known: readonly (readonly [RegExp, unknown])[]) => {
    const title = (head?.[i] ?? "").toLowerCase();
    if (unitIn(title, known) !== null) return 2;
    if (cellsIn(i).some(({ unit }) => known.some(([, own]) => own === unit))) return 2;
    return name.test(title) ? 1 : 0;
  };
  const best = (score: (i: number) => number, not: number) =>
    [...places].filter((i) => i !== not && score(i) > 0).sort((a, b) => score(b) - score(a) || a - b)[0];
  const travel = best((i) => says(i, TRAVEL_NAME, TRAVEL_UNIT), -1);
  const force = best((i) => says(i, FORCE_NAME, FORCE_UNIT), travel ?? -1);
  const numeric = places.filter((i) => cellsIn(i).some(({ number }) => number !== null));
  const left = numeric.filter((i) => i !== travel && i !== force);
  const first = travel ?? left.shift() ?? 0;
  return { travel: first, force: force ?? left.shift() ?? 1 };
}

function readingIn(cells: readonly Cell[], { travel, force }: Columns): Pick<PastedRow, "travel" | "force" | "say"> {
  const [x, f] = [cells[travel]?.number ?? null, cells[force]?.number ?? null];
  const read = { travel: x ?? "", force: f ?? "" };
  if (x === null && f === null) return { ...read, say: "This line has no numbers. It is left out." };
  if (x === null) return { ...read, say: "The travel is missing, or is no number." };
  if (f === null) return { ...read, say: "The force is missing, or is no number." };
  return { ...read, say: null };
}
