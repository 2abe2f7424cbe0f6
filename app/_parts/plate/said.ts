/** When the lines of each item are said, as shares of its time, for the ink at the edge of its plate. Pure. */

/** From and to as shares of the item's time, 0 to 1. */
export interface Stretch {
  readonly from: number;
  readonly to: number;
}

/** Seconds of the class. */
interface Moments {
  readonly cues: readonly { readonly item: string; readonly from: number; readonly to: number }[];
  readonly rows: readonly { readonly item: string; readonly start: number; readonly end: number }[];
}

export const SILENT_PLATE: readonly Stretch[] = [];

/** By item. What is said before the work begins is not on the plate: it falls into the change. */
export function saidStretches({ cues, rows }: Moments): ReadonlyMap<string, readonly Stretch[]> {
  const times = new Map(rows.map((row) => [row.item, row]));
  const stretches = new Map<string, Stretch[]>();
  for (const { item, from, to } of cues) {
    const row = times.get(item);
    const seconds = row ? row.end - row.start : 0;
    if (!row || seconds <= 0 || to <= row.start) continue;
    const share = (second: number) => Math.min(1, Math.max(0, (second - row.start) / seconds));
    stretches.set(item, [...(stretches.get(item) ?? []), { from: share(from), to: share(to) }]);
  }
  return stretches;
}
