/** Moving through the whole class by keyboard: left and right between items, up and down between lanes. */
import type { ClassCell, Lane } from "./types.ts";

/** A cell by the ids of its lane and itself, so that it can be found again after others have written. */
export interface CellSpot {
  readonly lane: string;
  readonly cell: string;
}
export type WalkKey = "left" | "right" | "up" | "down" | "home" | "end" | "top" | "bottom";

type Lanes = readonly Lane[];

/** The cell at a spot; if it is gone, the same item in the work lane, else the first cell. */
export function cellAt(lanes: Lanes, spot: CellSpot | null): { readonly lane: Lane; readonly cell: ClassCell } | null {
  const lane = lanes.find((l) => l.id === spot?.lane);
  const cell = find(lane, spot);
  if (lane && cell) return { lane, cell };
  const work = lanes.find((l) => l.kind === "work");
  const other = find(work, spot) ?? work?.cells[0];
  return work && other ? { lane: work, cell: other } : null;
}

const find = (lane: Lane | undefined, spot: CellSpot | null): ClassCell | undefined =>
  lane?.cells.find((cell: ClassCell) => cell.key === spot?.cell);

/** Where a key leads from a spot. At the edge it stays. Lanes without a cell at this item are skipped. */
export function walk(lanes: Lanes, from: CellSpot | null, key: WalkKey): CellSpot | null {
  const here = cellAt(lanes, from);
  if (!here) return null;
  const { lane, cell } = here;
  const cells: readonly ClassCell[] = lane.cells;
  const at = cells.indexOf(cell);
  switch (key) {
    case "left":
      return spotOf(lane, cells[at - 1] ?? cell);
    case "right":
      return spotOf(lane, cells[at + 1] ?? cell);
    case "home":
      return spotOf(lane, cells[0] ?? cell);
    case "end":
      return spotOf(lane, cells.at(-1) ?? cell);
    case "up":
      return across(lanes.slice(0, lanes.indexOf(lane)).reverse(), here);
    case "down":
      return across(lanes.slice(lanes.indexOf(lane) + 1), here);
    case "top":
      return across(lanes, here);
    case "bottom":
      return across([...lanes].reverse(), here);
  }
}

/** The first lane in this order that has a cell at the same item. */
function across(order: Lanes, here: { lane: Lane; cell: ClassCell }): CellSpot {
  for (const lane of order) {
    const cell = lane.cells.find((c: ClassCell) => c.first <= here.cell.first && here.cell.first <= c.last);
    if (cell) return spotOf(lane, cell);
  }
  return spotOf(here.lane, here.cell);
}

const spotOf = (lane: Lane, cell: ClassCell): CellSpot => ({ lane: lane.id, cell: cell.key });
