/** How the springs of a stretch are drawn in the width there is: every coil, narrower coils, or one coil and a number. */
import type { SpringCount } from "#lib/cues/springs.ts";
import { textWidth } from "./text-width.ts";

interface CoilGroup {
  readonly id: string;
  /** Coils drawn, and the number beside the one coil where not all are drawn. */
  readonly drawn: number;
  readonly times: number | null;
}
export interface CoilFit {
  /** Px of one coil. */
  readonly coil: number;
  readonly groups: readonly CoilGroup[];
}

/** Px. A coil narrower than the least is no longer seen as one. */
export const COIL = { widths: [26, 20, 15, 12], short: 13, gap: 4, type: 12 } as const;

/** Null where not even one coil and a number a spring fit: then only the words beside the picture say it. */
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
