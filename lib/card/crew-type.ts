/** The largest type at which a crew sheet fits on one page, worked out from its words, since paper cannot scroll. */
import { clockTime } from "#lib/plan/format.ts";
import type { CrewRow } from "./crew-sheet.ts";

/** Points, largest first. The smallest is used when none fits. */
export const CREW_TYPES = [9.6, 8.8, 8.2, 7.7, 7.2, 6.8, 6.4, 6] as const;

/** The area that A4 and US letter share: the width of A4 and the height of letter, less 9 mm of margin. mm. */
const PAPER = { width: 192, height: 261 } as const;
/** Widths of the columns whose text wraps, as shares of the page; the style sheet has the same. */
export const CREW_COLUMNS = { time: 0.052, move: 0.255, on: 0.17, change: 0.23, heard: 0.131, crew: 0.11 } as const;
const MM_PER_POINT = 25.4 / 72;
const LINE_HEIGHT = 1.22;
/** Average letter width as a share of the type size, measured over the demo's words. */
const LETTER = { plain: 0.5, bold: 0.53 } as const;
/** Gap between cells; space and rule of a row; page head, column heads and safety words together. mm. */
const GAP = 2;
const ROW_GAP = 0.9;
const REST = 40;

/** In points. */
export function crewType(rows: readonly CrewRow[]): number {
  return CREW_TYPES.find((type) => heightAt(rows, type) <= PAPER.height) ?? CREW_TYPES[CREW_TYPES.length - 1] ?? 6;
}

/** Height of the sheet at a type size, mm. */
function heightAt(rows: readonly CrewRow[], type: number): number {
  const em = type * MM_PER_POINT;
  // The opening and the closing have a row each.
  const lines = rows.reduce((sum, row) => sum + linesOf(row, em), 2);
  return REST + lines * em * LINE_HEIGHT + (rows.length + 2) * ROW_GAP;
}

function linesOf(row: CrewRow, em: number): number {
  if (row.kind !== "move") return 1;
  const breaks = (text: string, part: number, letter: number) =>
    Math.ceil((text.length * letter * em) / (PAPER.width * part - GAP));
  const name = `00 ${row.title} · ${row.side ?? ""}, ${clockTime(row.seconds)}`;
  const springs = `${row.facing}, ${row.springs.map(({ count, label }) => `${count} ${label} `).join(", ")}`;
  return Math.max(
    1,
    breaks(name, CREW_COLUMNS.move, LETTER.bold),
    breaks(springs, CREW_COLUMNS.on, LETTER.bold),
    breaks(row.changes.map(({ words }) => words).join(", "), CREW_COLUMNS.change, LETTER.plain),
    breaks(row.lines.join(" "), CREW_COLUMNS.crew, LETTER.bold),
  );
}
