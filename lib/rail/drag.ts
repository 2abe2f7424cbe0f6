/** What a hand on the rail means: seconds from a dragged end, a new place from a dragged item. Pure; pixels in. */
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
  const line = by === 1 ? Math.floor(seconds / grid + 1e-9) + 1 : Math.ceil(seconds / grid - 1e-9) - 1;
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

/** Nearest height to `wanted` at which a label `height` tall, hanging from it, covers none of `taken`. */
export function freeSpot(wanted: number, height: number, taken: readonly { top: number; height: number }[]): number {
  const free = (y: number) => taken.every((t) => y + height <= t.top || y >= t.top + t.height);
  const candidates = [wanted, ...taken.flatMap((t) => [t.top - height, t.top + t.height])].filter((y) => y >= 0);
  const spots = candidates.filter(free).sort((a, b) => Math.abs(a - wanted) - Math.abs(b - wanted));
  return spots[0] ?? wanted;
}
