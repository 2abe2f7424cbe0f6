/** When the lines of each item are said, for the ink at the edge of its plate. */
import { useMemo } from "react";
import { SILENT_PLATE, type Stretch, saidStretches } from "#app/_parts/plate/said.ts";
import type { SessionSnapshot } from "#app/_session/session-types.ts";

export function useSaid({ track, rows }: SessionSnapshot): (id: string) => readonly Stretch[] {
  const said = useMemo(() => saidStretches({ cues: track.cues, rows }), [track, rows]);
  return (id) => said.get(id) ?? SILENT_PLATE;
}
