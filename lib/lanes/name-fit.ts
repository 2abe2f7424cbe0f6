/**
 * How names are written in their blocks: across if they fit, turned upright if blocks are narrow, and as a number with a
 * list of names if even that does not fit. A name is never cut.
 */
import { textWidth, wrapText } from "./text-width.ts";

export type NameFit =
  | { readonly way: "across" | "up"; readonly lines: readonly string[] }
  /** `row`: the row of its number, so that the numbers of narrow neighbours do not touch. */
  | { readonly way: "number"; readonly row: number };

export interface NameBlock {
  readonly name: string;
  readonly number: string;
  /** Px: position from the left end of the axis, and width of the block. */
  readonly x: number;
  readonly width: number;
}

export interface NamesFit {
  /** Height that the names need, px. */
  readonly height: number;
  /** One per block, in the given order. */
  readonly fits: readonly NameFit[];
  /** True when at least one name is a number: then the list is shown and every block has its number. */
  readonly numbered: boolean;
}

/** Px. Upright lines, side by side along the axis, are a little tighter. */
export const NAME_TYPE = { size: 13, line: 16, upLine: 15, padding: 4, number: 12 } as const;
const HEIGHTS = [48, 64, 80, 96, 112, 128, 144, 160] as const;

/**
 * The lowest height at which every name fits. If there is none: the height at which most fit, with numbers for the rest.
 * If blocks are so narrow that numbers in one row would touch, all names become numbers, in several rows.
 */
export function fitNames(blocks: readonly NameBlock[]): NamesFit {
  const rows = numberRows(blocks);
  if (rows.some((row) => row > 0) && blocks.some((block) => !isNamed(block))) return allNumbers(rows);
  let best: { height: number; fits: (NameFit | null)[]; open: number } | null = null;
  for (const height of HEIGHTS) {
    const fits = blocks.map((block) => fitOne(block, height));
    const open = fits.filter((fit) => fit === null).length;
    if (best === null || open < best.open) best = { height, fits, open };
    if (open === 0) break;
  }
  if (best === null) return { height: HEIGHTS[0], fits: [], numbered: false };
  return { height: best.height, fits: best.fits.map((fit) => fit ?? FIRST_ROW), numbered: best.open > 0 };
}

const FIRST_ROW: NameFit = { way: "number", row: 0 };

/** True when the name fits at some height. */
const isNamed = (block: NameBlock): boolean => fitOne(block, HEIGHTS[HEIGHTS.length - 1] ?? 0) !== null;

function allNumbers(rows: readonly number[]): NamesFit {
  const height = Math.max(HEIGHTS[0], (Math.max(0, ...rows) + 1) * NAME_TYPE.line);
  return { height, fits: rows.map((row) => ({ way: "number", row })), numbered: true };
}

function fitOne({ name, width }: NameBlock, height: number): NameFit | null {
  const { size, line, upLine, padding } = NAME_TYPE;
  const inside = width - 2 * padding;
  const across = wrapText(name, inside, Math.floor(height / line), size);
  if (across) return { way: "across", lines: across };
  const up = wrapText(name, height - padding, Math.floor((width - 2) / upLine), size);
  return up ? { way: "up", lines: up } : null;
}

/** A row for each number, so that no two numbers in one row touch. */
function numberRows(blocks: readonly NameBlock[]): number[] {
  const ends: number[] = [];
  return blocks.map((block) => {
    const box = numberBox(block);
    const free = ends.findIndex((end) => end <= box.x);
    const row = free === -1 ? ends.length : free;
    ends[row] = box.x + box.width;
    return row;
  });
}

/** Where a block's number is written: centred in the block, wider than it if necessary. */
export function numberBox({ number, x, width }: NameBlock): { readonly x: number; readonly width: number } {
  const needed = textWidth(number, NAME_TYPE.number) + 2;
  return { x: x + (width - needed) / 2, width: needed };
}
