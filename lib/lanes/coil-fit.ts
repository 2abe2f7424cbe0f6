/** How springs are drawn in the available width: every coil, narrower coils, or one coil and a number. */
import type { SpringCount } from "#lib/cues/springs.ts";
import { textWidth } from "./text-width.ts";

interface CoilGroup {
  readonly id: string;
  /** How many coils are drawn; `times` is the number next to a single coil that stands for several, else null. */
  readonly drawn: number;
  readonly times: number | null;
}
export interface CoilFit {
  /** Width of one coil, px. */
  readonly coil: number;
  readonly groups: readonly CoilGroup[];
}

/** Px. A coil narrower than the smallest no longer looks like one. */
export const COIL = { widths: [26, 20, 15, 12], short: 13, gap: 4, type: 12 } as const;

/** Null when not even one coil and a number per spring fit; then only the cell's words name the springs. */
export function fitCoils(springs: readonly SpringCount[], width: number): CoilFit | null {
  const all = springs.reduce((sum, spring) => sum + spring.count, 0);
  const gaps = Math.max(0, springs.length - 1) * COIL.gap;
  const coil = COIL.widths.find((w) => all * w + gaps <= width);
  if (coil !== undefined) {
    return { coil, groups: springs.map(({ id, count }) => ({ id, drawn: count, times: null })) };
  }
  const short = springs.reduce((sum, { count }) => sum + COIL.short + timesWidth(count), gaps);
  if (short > width) return null;
  return {
    coil: COIL.short,
    groups: springs.map(({ id, count }) => ({ id, drawn: 1, times: count > 1 ? count : null })),
  };
}

const timesWidth = (count: number): number => (count > 1 ? textWidth(`×${count}`, COIL.type) : 0);
