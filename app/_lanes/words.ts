/** Words of the whole class: what a cell says aloud and in the line over the lanes. */

import type { ClassCell, Lane } from "#lib/lanes/types.ts";
import { clockTime } from "#lib/plan/format.ts";

/** The accessible name of a cell. */
export function cellLabel(lane: Lane, cell: ClassCell): string {
  if (lane.kind !== "work") return `${cell.name}: ${cell.say}`;
  const work = lane.cells.find((c) => c.key === cell.key);
  return work && work.number > 0 ? `${work.number}, ${cell.name}: ${cell.say}` : `${cell.name}: ${cell.say}`;
}

/** "2:06 to 3:06". */
export const timesOf = ({ from, to }: ClassCell): string => `${clockTime(from)} to ${clockTime(to)}`;
