/** Round numbers for an axis. Pure. */

/** From 0 in steps of 1, 2 or 5 times a power of ten, four to eight of them; the last is at or above `most` (> 0). */
export function niceTicks(most: number): number[] {
  const power = 10 ** Math.floor(Math.log10(most / 4));
  const step = [1, 2, 5, 10].map((n) => n * power).find((s) => Math.ceil(most / s - 1e-9) <= 7) ?? 10 * power;
  const count = Math.max(1, Math.ceil(most / step - 1e-9));
  return Array.from({ length: count + 1 }, (_, i) => Number((i * step).toPrecision(12)));
}
