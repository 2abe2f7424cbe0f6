/** Repetitions as a line: up while the carriage goes out, level while it is held, down on the way back. */
import { tenth } from "#lib/numbers/round.ts";
import type { BreathCell } from "./types.ts";

interface Size {
  readonly width: number;
  readonly height: number;
}

/** Narrower repetitions can no longer be seen. */
const LEAST_PX = 4;
/** In narrower repetitions the two halves can no longer be told apart. */
const LEAST_HALVES_PX = 9;

/**
 * SVG paths of the given size: the whole line, and the part during which people breathe out. Null for a hold, and for more
 * repetitions than can be seen. The last repetition is cut when the time ends.
 */
export function wavePaths({ reps, cycle, exhaleOn }: BreathCell, { width, height }: Size) {
  if (reps === null || cycle === null || width / reps < LEAST_PX) return null;
  const low = height - 1.5;
  const high = 2;
  const whole = cycle.reduce((sum, part) => sum + part, 0);
  const px = width / (reps * whole);
  const halves = width / reps >= LEAST_HALVES_PX;
  let x = 0;
  let line = `M0 ${low}`;
  let exhale = "";
  const go = (seconds: number, from: number, to: number, out: boolean) => {
    const end = Math.min(width, x + seconds * px);
    const part = seconds > 0 ? (end - x) / (seconds * px) : 0;
    const y = from + (to - from) * part;
    if (out && halves && end > x) exhale += `M${tenth(x)} ${tenth(from)}L${tenth(end)} ${tenth(y)}`;
    line += `L${tenth(end)} ${tenth(y)}`;
    x = end;
  };
  for (let n = 0; n < reps && x < width - 0.01; n++) {
    go(cycle[0], low, high, exhaleOn === "out");
    if (x < width) go(cycle[1], high, high, false);
    if (x < width) go(cycle[2], high, low, exhaleOn === "back");
    if (x < width) go(cycle[3], low, low, false);
  }
  return { line, exhale };
}
