/** What a hand on the rail means: seconds from a dragged end, a new place from a dragged item. Pure; pixels in. */
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

/** Seconds that a dragged lower end stands for: on the grid, within its bounds; no movement changes nothing. */
export function draggedSeconds(d: EndDrag): number {
  const moved = d.dy / d.scale;
  if (Math.abs(moved) < d.grid / 2) return d.seconds;
  return onGrid(d.seconds + moved, d.grid, d.shortest, d.longest);
}

/** One step of the grid up or down; a time off the grid goes to the next line of it in that direction. */
export function steppedSeconds(seconds: number, by: 1 | -1, grid: number, shortest = grid): number {
  const line = by === 1 ? Math.floor(seconds / grid + NOISE) + 1 : Math.ceil(seconds / grid - NOISE) - 1;
  return Math.max(shortest, line * grid);
}

function onGrid(seconds: number, grid: number, shortest: number, longest: number): number {
  const snapped = Math.round(seconds / grid) * grid;
  return Math.min(Math.max(snapped, shortest), longest);
}

/**
 * The item after which a dragged one would stand when let go with its middle at `y`; null is the top. The dragged item
 * itself does not count: with the hand held still the answer is where it already stands.
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
 * Nearest height to `wanted.top` at which a label covers no other and time still runs down: below every earlier one and
 * above every later one. Where both leave no room, it stays below the earlier.
 */
export function freeSpot(wanted: Label, taken: readonly Label[]): number {
  const above = taken.filter((t) => t.seconds <= wanted.seconds).map((t) => t.top + t.height);
  const below = taken.filter((t) => t.seconds > wanted.seconds).map((t) => t.top - wanted.height);
  return Math.max(0, ...above, Math.min(wanted.top, ...below));
}
