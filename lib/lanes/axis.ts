/**
 * The time axis of the whole class: from seconds to CSS pixels, the marks on it, and the zoom steps. Linear everywhere,
 * unlike the rail, so what looks equally long is equally long.
 */
import { clockTime } from "#lib/plan/format.ts";

interface Tick {
  readonly second: number;
  readonly x: number;
  /** Minutes ("12"), or minutes and seconds where a mark stands between two minutes ("12:30"). */
  readonly label: string;
}

export interface Axis {
  /** Length of the axis: to the end of the class or of its slot, whichever is later. */
  readonly seconds: number;
  /** Pixels a second. */
  readonly scale: number;
  readonly width: number;
  readonly ticks: readonly Tick[];
}

/** Width that a mark's label needs, px. */
const LABEL_PX = 40;
/** Seconds between two marks. */
const INTERVALS = [10, 15, 30, 60, 120, 300, 600, 900, 1800, 3600] as const;
/** Pixels a second. Only "fit", the whole class at once, may be smaller. */
export const ZOOM_STEPS = [0.25, 0.4, 0.6, 0.9, 1.4, 2, 3, 4.5] as const;
/** Scales closer than this factor look the same. */
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

/** The scale at which `seconds` are `width` px wide. */
export function fitScale(seconds: number, width: number): number {
  return seconds > 0 ? Math.max(0.01, Math.floor((width / seconds) * 1e4) / 1e4) : 1;
}

/**
 * The scale one step nearer (1) or farther (-1). "fit", the whole class at once, is the farthest. Past the last step the
 * scale stays.
 */
export function zoomed(scale: number | "fit", fit: number, by: 1 | -1): number | "fit" {
  const now = scale === "fit" ? fit : Math.max(scale, fit);
  const steps = ZOOM_STEPS.filter((step) => step > fit * SAME);
  if (by === 1) return steps.find((step) => step > now * SAME) ?? scale;
  return steps.findLast((step) => step < now / SAME) ?? "fit";
}

/** The smallest scale at which half of the items are at least `px` wide, but never smaller than "fit". */
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

/** Left free at the right end of a box, so that adjacent boxes stay distinct. */
const SEAM_PX = 1;

/** Where a stretch of time is drawn: never outside the axis, and never over what begins when it ends. */
export function boxOf(axis: Axis, { from, to }: AxisSpan): Box {
  const x = clamp(from * axis.scale, axis.width);
  const end = clamp(to * axis.scale, axis.width);
  const width = end - x;
  return { x, width: width > 3 * SEAM_PX ? width - SEAM_PX : Math.max(0, width) };
}

const clamp = (x: number, width: number): number => Math.min(width, Math.max(0, x));
