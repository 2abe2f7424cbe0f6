/** What a drag on the rail means: new seconds from a dragged end, a new place from a dragged item. Pure; takes pixels. */
import { NOISE } from "#lib/numbers/round.ts";
import type { RailLayout } from "./layout.ts";

export interface EndDrag {
  /** Seconds when the drag began. */
  readonly seconds: number;
  /** Pixels moved since; downwards is longer. */
  readonly dy: number;
  /** Pixels a second. */
  readonly scale: number;
  readonly grid: number;
  readonly shortest: number;
  readonly longest: number;
}

/** Seconds for a dragged lower end, on the grid and within bounds. A drag below half a grid step changes nothing. */
export function draggedSeconds(d: EndDrag): number {
  const moved = d.dy / d.scale;
  if (Math.abs(moved) < d.grid / 2) return d.seconds;
  return onGrid(d.seconds + moved, d.grid, d.shortest, d.longest);
}

/** One grid step up or down; a time off the grid goes to the next grid line in that direction. */
export function steppedSeconds(seconds: number, by: 1 | -1, grid: number, shortest = grid): number {
  const line = by === 1 ? Math.floor(seconds / grid + NOISE) + 1 : Math.ceil(seconds / grid - NOISE) - 1;
  return Math.max(shortest, line * grid);
}

function onGrid(seconds: number, grid: number, shortest: number, longest: number): number {
  const snapped = Math.round(seconds / grid) * grid;
  return Math.min(Math.max(snapped, shortest), longest);
}

/**
 * The item after which a dragged one lands when it is dropped with its middle at `y`; null is the top. The dragged item
 * itself is ignored, so a drag that does not move leaves it where it is.
 */
export function dropAfter(layout: RailLayout, dragged: string, y: number): string | null {
  let after: string | null = null;
  for (const s of layout.segments) {
    if (s.item === null || s.kind === "gap" || s.item === dragged) continue;
    if (y < s.top + s.height / 2) break;
    after = s.item;
  }
  return after;
}

/** A clock label that hangs from `top`. */
export interface Label {
  readonly top: number;
  readonly height: number;
  readonly seconds: number;
}

/**
 * The height nearest to `wanted.top` at which a label covers no other and labels stay in order of time: below every earlier
 * one and above every later one. If there is no such height, it stays below the earlier ones.
 */
export function freeSpot(wanted: Label, taken: readonly Label[]): number {
  const above = taken.filter((t) => t.seconds <= wanted.seconds).map((t) => t.top + t.height);
  const below = taken.filter((t) => t.seconds > wanted.seconds).map((t) => t.top - wanted.height);
  return Math.max(0, ...above, Math.min(wanted.top, ...below));
}
