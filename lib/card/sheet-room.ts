/**
 * How a signed class lies on paper: which rows stand on which page, and which changes are drawn as figures: as many as cost
 * no further page. Worked out from the words, since measuring in the browser would depend
 * on the printer's font; `tests/browser/paper.spec.ts` holds it to what Chromium makes of it. All lengths in mm.
 */
import type { CrewRow } from "./crew-sheet.ts";
import type { SheetRow } from "./sheet.ts";

/** A row of a sheet. */
interface Piece {
  readonly id: string;
  /** How many acts its change has; 0 for what is never drawn. */
  readonly acts: number;
  /** How high it is without and with the figure of its change. */
  readonly plain: number;
  readonly drawn: number;
}

export interface SheetLayout<Row> {
  readonly pages: readonly (readonly Row[])[];
  /** Ids of the rows whose change is drawn. */
  readonly drawn: ReadonlySet<string>;
}

/** Height of a page of the smaller of A4 and letter, and of what is free at the foot of a column that ends between rows. */
const PAGE = 261;
const SPILL = 9;
/** What the head takes of the first page, and marks, the trained body, safety words and the head of the record of the last. */
const HEAD = 24;
const FOOT = { print: 73, crew: 36 } as const;
/** What is repeated on every page of the crew sheet: the names of its columns, and of the edition. */
const REPEATED = 14;
/** A line of acts. */
const LINE = 3.95;

/** How high the figure of the change into an item is; null where there is none. */
export type FigureHeight = (item: string) => number | null;

/** Of the print sheet, which runs in two columns. */
export const layoutOfPrint = (rows: readonly SheetRow[], figure: FigureHeight): SheetLayout<SheetRow> =>
  laidOut(rows, (row) => printed(row, figure), { columns: 2, page: PAGE - SPILL, foot: FOOT.print });

/** Of the crew sheet, which runs in one. */
export const layoutOfCrew = (rows: readonly CrewRow[], figure: FigureHeight): SheetLayout<CrewRow> =>
  laidOut(rows, (row) => forCrew(row, figure), { columns: 1, page: PAGE - SPILL - REPEATED, foot: FOOT.crew });

interface Paper {
  readonly columns: number;
  /** Height of a page that rows can take, and of what stands under the last of them. */
  readonly page: number;
  readonly foot: number;
}

function laidOut<Row extends { readonly id: string; readonly kind: string }>(
  rows: readonly Row[],
  pieceOf: (row: Row) => Piece,
  paper: Paper,
): SheetLayout<Row> {
  const pieces = rows.map(pieceOf);
  const heightOf = (drawn: ReadonlySet<string>) => (row: Row, i: number) =>
    pieces[i] ? (drawn.has(row.id) ? pieces[i].drawn : pieces[i].plain) : 0;
  const split = (drawn: ReadonlySet<string>) => pagesOf(rows, heightOf(drawn), paper);
  const least = split(new Set()).length;
  const drawn = new Set<string>();
  for (const piece of pieces.toSorted((a, b) => worth(b) - worth(a))) {
    if (piece.acts === 0) continue;
    drawn.add(piece.id);
    if (split(drawn).length > least) drawn.delete(piece.id);
  }
  return { pages: split(drawn), drawn };
}

/** Acts for the room that their figure takes, so that many are drawn rather than one. */
const worth = ({ acts, plain, drawn }: Piece): number => acts / (1 + drawn - plain);

/** Filled one after the other; a heading stays with what it leads, and the foot needs room on the last. */
function pagesOf<Row extends { readonly kind: string }>(
  rows: readonly Row[],
  heightOf: (row: Row, i: number) => number,
  { columns, page: high, foot }: Paper,
): Row[][] {
  const room = (pages: number) => columns * (high - (pages === 0 ? HEAD : 0));
  const pages: Row[][] = [];
  let page: Row[] = [];
  let used = 0;
  for (const [i, row] of rows.entries()) {
    const lead = rows[i - 1]?.kind === "heading" ? i - 1 : i;
    const height = heightOf(row, i) + (row.kind === "heading" && rows[i + 1] ? heightOf(rows[i + 1] as Row, i + 1) : 0);
    if (used + height > room(pages.length) && page.length > 0 && lead === i) {
      pages.push(page);
      page = [];
      used = 0;
    }
    page.push(row);
    used += heightOf(row, i);
  }
  const full = used > room(pages.length) - columns * foot;
  return full ? [...pages, page, []] : [...pages, page];
}

/** Letters to a line of a plate: its name, its numbers, its line. */
const PLATE = { name: 31, numbers: 32, line: 36, least: 15.4 } as const;
/** A plate of the crew sheet is wider. */
const WIDE = { name: 39, numbers: 40, line: 45, least: 15.4 } as const;

interface Plated {
  readonly title: string;
  readonly side: string | null;
  readonly springs: readonly unknown[];
}

function plateHeight(
  { title, side, springs }: Plated,
  line: string,
  letters: { readonly [part in keyof typeof PLATE]: number },
) {
  const name = 4.6 * linesOf(`${title}${side ? ` ${side}    ` : ""}`, letters.name);
  // Clock and seconds, then each kind of spring with its coils.
  const numbers = 4.1 * linesOf("-".repeat(14 + springs.length * 13), letters.numbers);
  return Math.max(letters.least, 1.6 + name + numbers + 4.3 * linesOf(line, letters.line));
}

/** Letters to a line of the print sheet's changes, without and with a figure beside them. */
const PRINT = { acts: 42, beside: 24 } as const;

function printed(row: SheetRow, figure: FigureHeight): Piece {
  const { id } = row;
  if (row.kind === "heading") return still(id, 4.5);
  if (row.kind === "pause") return still(id, 2 + LINE * linesOf(row.title, PRINT.acts));
  const plate = plateHeight(row, row.starts ?? "", PLATE);
  const acts = (letters: number) => Math.max(5.4, 1.8 + LINE * actLines(row, letters));
  const high = row.changes.length > 0 ? figure(id) : null;
  return {
    id,
    acts: high === null ? 0 : row.changes.length,
    plain: plate + acts(PRINT.acts),
    drawn: plate + Math.max(1.8 + (high ?? 0), acts(PRINT.beside)),
  };
}

/** Letters to a line of the crew sheet's columns. */
const CREW = { acts: 37, beside: 19, lines: 14 } as const;

function forCrew(row: CrewRow, figure: FigureHeight): Piece {
  const { id } = row;
  if (row.kind === "heading") return still(id, 5.6);
  if (row.kind === "pause") return still(id, 9.9);
  const plate = plateHeight(row, "facing", WIDE);
  const others = Math.max(plate, 4.3 * linesOf(row.lines.join(" "), CREW.lines));
  const acts = (letters: number) => LINE * actLines(row, letters, 7);
  const high = row.changes.length > 0 ? figure(id) : null;
  return {
    id,
    acts: high === null ? 0 : row.changes.length,
    plain: 1.2 + Math.max(others, acts(CREW.acts)),
    drawn: 1.2 + Math.max(others, high ?? 0, acts(CREW.beside)),
  };
}

const still = (id: string, height: number): Piece => ({ id, acts: 0, plain: height, drawn: height });

interface Acts {
  readonly changes: readonly { readonly words: string; readonly springs?: readonly unknown[] }[];
}

/** Acts follow one another on a line for as long as they fit, after `before` letters; each has its number, and those of springs their coils. */
function actLines({ changes }: Acts, letters: number, before = 0): number {
  let lines = 1;
  let used = before;
  for (const { words, springs = [] } of changes) {
    const length = words.length + 4 + springs.length * 4;
    if (used > 0 && used + length > letters) {
      lines += 1;
      used = 0;
    }
    lines += Math.max(0, linesOf("-".repeat(length), letters) - 1);
    used += length;
  }
  return lines;
}

const linesOf = (text: string, letters: number): number => Math.max(1, Math.ceil(text.length / letters));
