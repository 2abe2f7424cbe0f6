/** When each line of the script is said: the cue track, worked out once for all rules of one check. */
import { cueTrack } from "#lib/cues/cue-track.ts";
import { linesOfTrack } from "#lib/cues/lines-of-track.ts";
import type { Cue, CueTrack } from "#lib/cues/types.ts";
import type { ScriptLine } from "#lib/plan/schema.ts";
import type { PlacedMove, RuleContext } from "../types.ts";

const tracks = new WeakMap<RuleContext, CueTrack>();

/** The cue track of the plan under check. */
export function trackOf(ctx: RuleContext): CueTrack {
  const known = tracks.get(ctx);
  if (known) return known;
  const track = isTimed(ctx) ? cueTrack(ctx.plan) : NOTHING_SAID;
  tracks.set(ctx, track);
  return track;
}

const NOTHING_SAID: CueTrack = { cues: [], dropped: [], talkSeconds: 0, talkShare: 0 };
/** Above what a plan file may hold in one change and move. */
const LONGEST_SECONDS = 40_000;

/** A damaged plan may have times that are none, and nothing can be placed in them. */
const isTimed = ({ rows, plan, total }: RuleContext): boolean =>
  [total, plan.headsUpSeconds ?? 0, plan.countInSeconds ?? 0].every(Number.isFinite) &&
  rows.every(
    ({ transitionFrom, start, end }) =>
      start >= transitionFrom && end >= start && end - transitionFrom <= LONGEST_SECONDS,
  );

export interface SaidLine {
  readonly placed: PlacedMove;
  readonly line: ScriptLine;
  /** Place among the item's lines, from 0. */
  readonly index: number;
  /** Undefined for a line that is set aside, and for the crew's. */
  readonly cue: Cue | undefined;
}

/** The lines that are spoken, in plan order. */
export function saidLines(ctx: RuleContext, wanted: (line: ScriptLine, placed: PlacedMove) => boolean): SaidLine[] {
  const asked = ctx.moves.filter((placed) =>
    placed.item.script?.some((line) => line.kind !== "crew" && wanted(line, placed)),
  );
  if (asked.length === 0) return [];
  const linesOf = linesOfTrack(trackOf(ctx));
  return asked.flatMap((placed) =>
    linesOf(placed.item).flatMap(({ line, index, cue }): SaidLine[] =>
      line.kind !== "crew" && wanted(line, placed) ? [{ placed, line, index, cue }] : [],
    ),
  );
}
