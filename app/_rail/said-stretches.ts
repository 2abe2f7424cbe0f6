/** When the lines of each item are said, as shares of its time, for the ink at the edge of its plate. */
import { useMemo } from "react";
import type { SessionSnapshot } from "#app/_session/session-types.ts";

/** From and to as shares of the item's time, 0 to 1. */
export interface Stretch {
  readonly from: number;
  readonly to: number;
}

const NOTHING_SAID: readonly Stretch[] = [];

/** What is said before the work begins is not on the plate: it falls into the change. */
export function useSaid({ track, rows }: SessionSnapshot): (id: string) => readonly Stretch[] {
  const said = useMemo(() => {
    const times = new Map(rows.map((row) => [row.item, row]));
    const stretches = new Map<string, Stretch[]>();
    for (const { item, from, to } of track.cues) {
      const row = times.get(item);
      const seconds = row ? row.end - row.start : 0;
      if (!row || seconds <= 0 || to <= row.start) continue;
      const share = (second: number) => Math.min(1, Math.max(0, (second - row.start) / seconds));
      stretches.set(item, [...(stretches.get(item) ?? []), { from: share(from), to: share(to) }]);
    }
    return stretches;
  }, [track, rows]);
  return (id) => said.get(id) ?? NOTHING_SAID;
}
