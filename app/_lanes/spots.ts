/** Which cell of the lanes an element or a press is on. */
import type { MouseEvent } from "react";
import type { Axis } from "#lib/lanes/axis.ts";
import type { LaneColumn } from "#lib/lanes/types.ts";
import type { CellSpot } from "#lib/lanes/walk.ts";

export function spotAt(target: EventTarget): CellSpot | null {
  const element = target instanceof Element ? target.closest<HTMLElement>("[data-cell]") : null;
  const { lane, cell } = element?.dataset ?? {};
  return lane !== undefined && cell !== undefined ? { lane, cell } : null;
}

export function elementOf(grid: HTMLElement | null, spot: CellSpot | null): HTMLElement | null {
  if (grid === null || spot === null) return null;
  const { lane, cell } = spot;
  return grid.querySelector(`[data-lane="${CSS.escape(lane)}"][data-cell="${CSS.escape(cell)}"]`);
}

/** For a press on an empty place of a lane: what is done at that time. */
export function columnAt(columns: readonly LaneColumn[], axis: Axis, event: MouseEvent): LaneColumn | undefined {
  const track = event.target instanceof Element ? event.target.closest<HTMLElement>("[role=presentation]") : null;
  if (!track) return undefined;
  const second = (event.clientX - track.getBoundingClientRect().left) / axis.scale;
  return columns.find((column) => column.gapFrom <= second && second < column.to);
}
