/**
 * The time axis of the whole class: seconds from the start of the class to CSS pixels, the minutes marked on it, and the
 * steps of the zoom. Linear everywhere, unlike the rail: what looks as long as something else is as long.
 */
import { clockTime } from "#lib/plan/format.ts";

interface Tick {
  readonly second: number;
  readonly x: number;
  /** Minutes ("12"), or minutes and seconds where a mark stands between two minutes ("12:30"). */
  readonly label: string;
}

export interface Axis {
  /** Where the axis ends: the end of the class or of its slot, whichever is later. */
  readonly seconds: number;
  /** Pixels a second. */
  readonly scale: number;
  readonly width: number;
  readonly ticks: readonly Tick[];
}

/** Room a mark's label needs, in px. */
const LABEL_PX = 40;
/** Seconds between two marks. */
const INTERVALS = [10, 15, 30, 60, 120, 300, 600, 900, 1800, 3600] as const;
/** Pixels a second; below the first of them only the whole class at once is smaller. */
export const ZOOM_STEPS = [0.25, 0.4, 0.6, 0.9, 1.4, 2, 3, 4.5] as const;
/** Two scales nearer than this are one step to the eye. */
const SAME = 1.05;

export interface AxisInput {
  /** Seconds of the class, closing included, and of its slot. */
  readonly total: number;
  readonly lengthSeconds: number;
  /** Pixels a second, above 0. */
  readonly scale: number;
}

export function axisOf({ total, lengthSeconds, scale }: AxisInput): Axis {
  const seconds = Math.max(total, lengthSeconds);
  const interval = INTERVALS.find((step) => step * scale >= LABEL_PX) ?? INTERVALS[INTERVALS.length - 1] ?? 3600;
  const ticks: Tick[] = [];
  for (let second = 0; second <= seconds; second += interval) {
    const label = second % 60 === 0 ? String(second / 60) : clockTime(second);
    ticks.push({ second, x: second * scale, label });
  }
  return { seconds, scale, width: seconds * scale, ticks };
}

/** The scale at which so many seconds are as wide as `width` px. */
export function fitScale(seconds: number, width: number): number {
  return seconds > 0 ? Math.max(0.01, Math.floor((width / seconds) * 1e4) / 1e4) : 1;
}

/**
 * The scale one step nearer (1) or farther (-1): "fit" is the whole class at once and the farthest there is. At the
 * end of the steps the scale stays.
 */
export function zoomed(scale: number | "fit", fit: number, by: 1 | -1): number | "fit" {
  const now = scale === "fit" ? fit : Math.max(scale, fit);
  const steps = ZOOM_STEPS.filter((step) => step > fit * SAME);
  if (by === 1) return steps.find((step) => step > now * SAME) ?? scale;
  return steps.findLast((step) => step < now / SAME) ?? "fit";
}

/** The smallest scale at which half of the items are at least `px` wide, and never smaller than the whole class. */
export function scaleForTargets(seconds: readonly number[], px: number, fit: number): number | "fit" {
  const sorted = seconds.filter((s) => s > 0).sort((a, b) => a - b);
  const middle = sorted[Math.floor(sorted.length / 2)];
  if (middle === undefined || middle * fit >= px) return "fit";
  return ZOOM_STEPS.find((step) => step > fit * SAME && middle * step >= px) ?? ZOOM_STEPS[ZOOM_STEPS.length - 1] ?? 1;
}

export interface AxisSpan {
  readonly from: number;
  readonly to: number;
}
export interface Box {
  readonly x: number;
  readonly width: number;
}

/** Kept free at the right end of a box, so that two neighbours with nothing between them are still two. */
const SEAM_PX = 1;

/** Where a stretch of time is drawn. Never outside the axis; never into what begins when it ends. */
export function boxOf(axis: Axis, { from, to }: AxisSpan): Box {
  const x = clamp(from * axis.scale, axis.width);
  const end = clamp(to * axis.scale, axis.width);
  const width = end - x;
  return { x, width: width > 3 * SEAM_PX ? width - SEAM_PX : Math.max(0, width) };
}

const clamp = (x: number, width: number): number => Math.min(width, Math.max(0, x));
