/** When each line of the script is said: the cue track, worked out once for all rules of one check. */
import { cueTrack } from "#lib/cues/cue-track.ts";
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

const byItem = <T extends { readonly item: string }>(list: readonly T[]): Map<string, T[]> => {
  const map = new Map<string, T[]>();
  for (const one of list) {
    const others = map.get(one.item);
    if (others) others.push(one);
    else map.set(one.item, [one]);
  }
  return map;
};

/** The lines that are spoken, in plan order. Lines of one kind are said as they were written, one after the other. */
export function saidLines(ctx: RuleContext, wanted: (line: ScriptLine, placed: PlacedMove) => boolean): SaidLine[] {
  const asked = ctx.moves.filter((placed) =>
    placed.item.script?.some((line) => line.kind !== "crew" && wanted(line, placed)),
  );
  if (asked.length === 0) return [];
  const track = trackOf(ctx);
  const cues = byItem(track.cues);
  const dropped = byItem(track.dropped);
  return asked.flatMap((placed) => {
    const said = [...(cues.get(placed.item.id) ?? [])];
    const aside = [...(dropped.get(placed.item.id) ?? [])];
    return (placed.item.script ?? []).flatMap((line, index): SaidLine[] => {
      if (line.kind === "crew") return [];
      const cue = takeFirst(aside, ({ kind, text }) => kind === line.kind && text === line.text)
        ? undefined
        : takeFirst(said, ({ kind }) => kind === line.kind);
      return wanted(line, placed) ? [{ placed, line, index, cue }] : [];
    });
  });
}

function takeFirst<T>(list: T[], is: (one: T) => boolean): T | undefined {
  const at = list.findIndex(is);
  return at < 0 ? undefined : list.splice(at, 1)[0];
}
