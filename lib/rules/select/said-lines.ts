/** When each line of the script is said, by the cue track. */
import { linesOfTrack } from "#lib/cues/lines-of-track.ts";
import type { Cue } from "#lib/cues/types.ts";
import type { ScriptLine } from "#lib/plan/schema.ts";
import type { PlacedMove, RuleContext } from "../define/types.ts";

export interface SaidLine {
  readonly placed: PlacedMove;
  readonly line: ScriptLine;
  /** Place among the item's lines, from 0. */
  readonly index: number;
  /** Undefined for crew lines and for lines there is no time for. */
  readonly cue: Cue | undefined;
}

/** The lines that are spoken, in plan order. */
export function saidLines(ctx: RuleContext, wanted: (line: ScriptLine, placed: PlacedMove) => boolean): SaidLine[] {
  const asked = ctx.moves.filter((placed) =>
    placed.item.script?.some((line) => line.kind !== "crew" && wanted(line, placed)),
  );
  if (asked.length === 0) return [];
  const linesOf = linesOfTrack(ctx.track);
  return asked.flatMap((placed) =>
    linesOf(placed.item).flatMap(({ line, index, cue }): SaidLine[] =>
      line.kind !== "crew" && wanted(line, placed) ? [{ placed, line, index, cue }] : [],
    ),
  );
}
