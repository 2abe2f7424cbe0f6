/**
 * Findings about one move item, from the rules that run once an item. Each kind runs again only when what it reads has
 * changed.
 */
import { classClock, tellingsOn } from "#lib/clock/clock.ts";
import type { PlacedSpan } from "#lib/cues/place-span.ts";
import type { Cue, CueTrack, DroppedLine } from "#lib/cues/types.ts";
import { Kept, type Reads } from "#lib/memo/kept.ts";
import { perValue } from "#lib/memo/per-value.ts";
import { moveOf, own } from "#lib/plan/lookup.ts";
import type { MoveItem, Plan, PlanItem } from "#lib/plan/schema.ts";
import { claimsOf } from "#lib/talk/claims/claims.ts";
import { walkSetups } from "#lib/transitions/walk.ts";
import { NOTHING_SAID, placedMoves, ScopedContext } from "./context.ts";
import type { PlacedMove } from "./define/types.ts";
import { type Batch, batchOf, mergedBatch, NOTHING_FOUND } from "./findings.ts";
import type { KnownPlan } from "./known-plan.ts";
import type { StudioRules } from "./studio-rules.ts";

/** A move item among the others. */
export interface MovePlace {
  readonly placed: PlacedMove;
  readonly before: PlacedMove | undefined;
  /** Seconds of the longest item of the same move before it in its block; 0 for none. */
  readonly earlier: number;
  /** Index among all items of the last move before it whose set-up is known, else of the first item. */
  readonly from: number;
  /** Index among the moves. */
  readonly n: number;
}

export interface MoveFindings {
  readonly kept: Readonly<Record<"item" | "change" | "voice" | "claims", Kept<Batch>>> & {
    /** Of the items of the change: what is told is kept for as long as they are the same value. */
    readonly moves: Kept<Plan["moves"]>;
  };
  readonly batch: Batch;
}

/** Everything that the findings about the item depend on: while it stays the same, no kind of rule has to be looked at. */
export function moveReads(studio: StudioRules, known: KnownPlan, at: MovePlace): Reads {
  const { frame, clock, spans } = known;
  const { placed, before, earlier, from, n } = at;
  const claimed = claimsAnything(placed.item) ? [known.times, clock] : [];
  const reads: unknown[] = [studio, frame, ...claimed, placed.row, before?.item, before?.row, before?.move];
  reads.push(spans?.[n], spans?.[n + 1], earlier);
  pushChange(reads, known, from, placed.index);
  return reads;
}

export function findingsOfMove(
  studio: StudioRules,
  known: KnownPlan,
  at: MovePlace,
  was: MoveFindings | undefined,
): MoveFindings {
  const kept = was?.kept ?? {
    ...{ item: new Kept(), change: new Kept(), voice: new Kept(), claims: new Kept() },
    moves: new Kept(),
  };
  const around = known.spans?.slice(at.n, at.n + 2) ?? [];
  const batch = mergedBatch([
    ofItem(kept.item, studio, known, at),
    ofChange(kept, studio, known, at),
    ofVoice(kept.voice, studio, known, { ...at, around }),
    ofClaims(kept.claims, studio, known, { ...at, around }),
  ]);
  return { kept, batch };
}

function ofItem(kept: Kept<Batch>, studio: StudioRules, { frame, plan }: KnownPlan, { placed }: MovePlace): Batch {
  return kept.get([studio, frame, placed.item, placed.move], () => {
    const small = fewItems(frame, plan, [placed.item]);
    const ctx = new ScopedContext("item", { plan: small, moves: placedMoves(small, undefined) });
    return batchOf(studio.reading.item, ctx);
  });
}

function ofChange(
  kept: MoveFindings["kept"],
  studio: StudioRules,
  known: KnownPlan,
  { placed, from }: MovePlace,
): Batch {
  const { frame, plan, clock } = known;
  const { item, index } = placed;
  const reads: unknown[] = [studio, frame];
  pushChange(reads, known, from, index);
  return kept.change.get(reads, () => {
    const few = fewItems(frame, plan, plan.items.slice(from, index + 1));
    const small = { ...few, moves: kept.moves.get(Object.entries(few.moves).flat(), () => few.moves) };
    // What a set-up line tells may be about a later item, so its seconds are those of the whole class.
    const tellings = tellingsOn(clock.rows.slice(from, index + 1));
    const { rows } = classClock(small, undefined, tellings);
    const steps = () => walkSetups(small, tellings).filter((step) => step.item === item);
    const ctx = new ScopedContext("change", { plan: small, moves: placedMoves(small, rows), steps });
    return batchOf(studio.reading.change, ctx, item.id);
  });
}

/** The items of a change, their library moves, and the seconds it takes to tell them. */
function pushChange(reads: unknown[], { plan, clock }: KnownPlan, from: number, to: number): void {
  for (let at = from; at <= to; at++) {
    const item = plan.items[at];
    reads.push(item, item?.kind === "move" ? moveOf(plan, item) : undefined, clock.rows[at]?.transition.telling);
  }
}

interface SpokenPlace extends MovePlace {
  /** What is said in the change into it and during it. */
  readonly around: readonly PlacedSpan[];
}

function ofVoice(kept: Kept<Batch>, studio: StudioRules, { frame, plan }: KnownPlan, at: SpokenPlace): Batch {
  const { placed, before, earlier, around } = at;
  const reads = [studio, frame, placed.item, placed.move, placed.row, before?.item, before?.move, before?.row];
  return kept.get([...reads, earlier, ...around], () => {
    const moves = before ? [before, placed] : [placed];
    const items = moves.map(({ item }) => item);
    const few = fewItems(frame, plan, items);
    const given = { plan: few, moves, earlier: before ? [0, earlier] : [earlier], track: () => trackOf(around) };
    return batchOf(studio.reading.voice, new ScopedContext("voice", given), placed.item.id);
  });
}

function ofClaims(kept: Kept<Batch>, studio: StudioRules, { times, clock }: KnownPlan, at: SpokenPlace): Batch {
  const { item, index } = at.placed;
  if (!claimsAnything(item)) return NOTHING_FOUND;
  return kept.get([studio, times, clock, item, ...at.around], () => {
    const plan = { ...times, items: times.items.map((one, n) => (n === index ? item : one)) };
    const wordless = keptWordless(clock).get([times], () => placedMoves(times, clock.rows));
    const moves = wordless.map((placed, n) => (n === at.n ? at.placed : placed));
    const ctx = new ScopedContext("claims", { ...clock, plan, moves, track: () => trackOf(at.around) });
    return batchOf(studio.reading.claims, ctx, item.id);
  });
}

/** The class without words, which all items with claims share. */
const keptWordless = perValue((_: KnownPlan["clock"]) => new Kept<readonly PlacedMove[]>());

const claimsAnything = perValue(({ script = [] }: MoveItem): boolean =>
  script.some((line) => claimsOf(line).length > 0),
);

const trackOf = (around: readonly PlacedSpan[]): CueTrack => ({
  ...NOTHING_SAID,
  cues: ([] as Cue[]).concat(...around.map(({ cues }) => cues)),
  dropped: ([] as DroppedLine[]).concat(...around.map(({ dropped }) => dropped)),
});

function fewItems(frame: Plan, { moves }: Plan, items: readonly PlanItem[]): Plan {
  const few: Plan["moves"] = {};
  for (const item of items) {
    const move = item.kind === "move" ? own(moves, item.move) : undefined;
    if (item.kind === "move" && move) few[item.move] = move;
  }
  return { ...frame, moves: few, items: [...items] };
}
