/**
 * Findings about one move item, from the rules that run once an item. Each kind runs again only when what it reads has
 * changed.
 */
import { type ClockRow, classClock, tellingsOn } from "#lib/clock/clock.ts";
import { cuesLater, type SpanOnClock } from "#lib/cues/on-clock.ts";
import type { CueTrack } from "#lib/cues/types.ts";
import { Kept, type Reads } from "#lib/memo/kept.ts";
import { perValue } from "#lib/memo/per-value.ts";
import { tenth } from "#lib/numbers/round.ts";
import { moveOf, own } from "#lib/plan/lookup.ts";
import type { MoveItem, Plan, PlanItem } from "#lib/plan/schema.ts";
import { walkSetups } from "#lib/transitions/walk.ts";
import { NOTHING_SAID, placedMoves, ScopedContext } from "./context.ts";
import type { PlacedMove, PlaceInClass } from "./define/types.ts";
import { type Batch, mergedBatch, NOTHING_FOUND, namesMoments, type OwnBatch, ownBatchOf } from "./findings.ts";
import type { KnownParts } from "./known-plan.ts";
import type { StudioRules } from "./studio-rules.ts";

/** A move item among the others. */
export interface MovePlace {
  readonly placed: PlacedMove;
  readonly before: PlacedMove | undefined;
  /** The rows of both, each in seconds from the start of its own work. */
  readonly own: ClockRow;
  readonly ownBefore: ClockRow | undefined;
  /** Where it stands, in seconds of the class. */
  readonly place: PlaceInClass | undefined;
  /** Seconds of the longest item of the same move before it in its block; 0 for none. */
  readonly earlier: number;
  /** Index among all items of the last move before it whose set-up is known, else of the first item. */
  readonly from: number;
  /** Index among the moves. */
  readonly n: number;
}

export interface MoveFindings {
  readonly kept: Readonly<Record<"item" | "change" | "voice" | "claims", Kept<OwnBatch>>> & {
    /** Of the items of the change: what is told is kept for as long as they are the same value. */
    readonly moves: Kept<Plan["moves"]>;
    readonly inClass: Kept<Batch>;
  };
  /** In seconds from the start of the item's work. */
  readonly own: readonly OwnBatch[];
  readonly namesMoments: boolean;
}

/**
 * Everything that the findings about the item depend on, except when it begins: while it stays the same, no kind of rule has
 * to be looked at.
 */
export function moveReads(studio: StudioRules, known: KnownParts, at: MovePlace): Reads {
  const { frame, spans } = known;
  const { placed, before, earlier, from, n } = at;
  const reads: unknown[] = [
    studio,
    frame,
    placed.item,
    at.own,
    before?.item,
    at.ownBefore,
    before?.move,
    sinceBefore(at),
  ];
  reads.push(spans?.[n]?.own, spans?.[n + 1]?.own, earlier);
  pushClaimed(reads, studio, known, at);
  pushChange(reads, known, from, placed.index);
  return reads;
}

/** The findings at their place in the class. */
export const inClass = ({ kept, own, namesMoments }: MoveFindings, { start }: ClockRow): Batch =>
  kept.inClass.get([own, namesMoments ? start : null], () => mergedBatch(own, start));

export function findingsOfMove(
  studio: StudioRules,
  known: KnownParts,
  at: MovePlace,
  was: MoveFindings | undefined,
): MoveFindings {
  const kept = was?.kept ?? {
    ...{ item: new Kept(), change: new Kept(), voice: new Kept(), claims: new Kept() },
    ...{ moves: new Kept(), inClass: new Kept() },
  };
  const around = known.spans?.slice(at.n, at.n + 2) ?? [];
  const own = [
    ofItem(kept.item, studio, known, at),
    ofChange(kept, studio, known, at),
    ofVoice(kept.voice, studio, known, { ...at, around }),
    ofClaims(kept.claims, studio, known, { ...at, around }),
  ].filter((batch) => batch !== NOTHING_FOUND);
  return { kept, own, namesMoments: own.some(namesMoments) };
}

function ofItem(
  kept: Kept<OwnBatch>,
  studio: StudioRules,
  { frame, plan }: KnownParts,
  { placed }: MovePlace,
): OwnBatch {
  return kept.get([studio, frame, placed.item, placed.move], () => {
    const small = fewItems(frame, plan, [placed.item]);
    const ctx = new ScopedContext("item", { plan: small, moves: placedMoves(small, undefined) });
    return ownBatchOf(studio.reading.item, ctx);
  });
}

function ofChange(
  kept: MoveFindings["kept"],
  studio: StudioRules,
  known: KnownParts,
  { placed, from }: MovePlace,
): OwnBatch {
  const { frame, plan, clock } = known;
  const { item, index } = placed;
  const reads: unknown[] = [studio, frame];
  pushChange(reads, known, from, index);
  return kept.change.get(reads, () => {
    const items = plan.items.slice(from, index + 1).flatMap((_, n) => itemOfChange(known, from + n, index) ?? []);
    const few = fewItems(frame, plan, items);
    const small = { ...few, moves: kept.moves.get(Object.entries(few.moves).flat(), () => few.moves) };
    // What a set-up line tells may be about a later item, so its seconds are those of the whole class.
    const tellings = tellingsOn(clock.rows.slice(index, index + 1));
    const { rows } = classClock(small, undefined, tellings);
    const steps = () => walkSetups(small, tellings).filter((step) => step.item.id === item.id);
    const ctx = new ScopedContext("change", { plan: small, moves: placedMoves(small, rows), steps });
    return ownBatchOf(studio.reading.change, ctx, item.id);
  });
}

/** An item of the change into the item at `to`: that with the words that tell the change, moves before it without words. */
function itemOfChange({ plan, setups, told }: KnownParts, at: number, to: number): PlanItem | undefined {
  if (at === to) return told[to];
  return plan.items[at]?.kind === "move" ? setups.items[at] : plan.items[at];
}

/** The items of a change, their library moves, and the seconds it takes to tell. */
function pushChange(reads: unknown[], known: KnownParts, from: number, to: number): void {
  const { plan, clock } = known;
  for (let at = from; at <= to; at++) {
    const item = itemOfChange(known, at, to);
    reads.push(item, item?.kind === "move" ? moveOf(plan, item) : undefined);
  }
  reads.push(clock.rows[to]?.transition.telling);
}

interface SpokenPlace extends MovePlace {
  /** What is said in the change into it and during it. */
  readonly around: readonly SpanOnClock[];
}

function ofVoice(kept: Kept<OwnBatch>, studio: StudioRules, { frame, plan }: KnownParts, at: SpokenPlace): OwnBatch {
  const { placed, before, earlier, around, own, ownBefore } = at;
  const reads = [studio, frame, placed.item, placed.move, own, before?.item, before?.move, ownBefore, sinceBefore(at)];
  return kept.get([...reads, earlier, ...around.map((span) => span.own)], () => {
    const now = { ...placed, row: own };
    const moves = before && ownBefore ? [{ ...before, row: earlierBy(ownBefore, sinceBefore(at)) }, now] : [now];
    const items = moves.map(({ item }) => item);
    const few = fewItems(frame, plan, items);
    const given = { plan: few, moves, earlier: before ? [0, earlier] : [earlier], track: () => trackOf(at) };
    return ownBatchOf(studio.reading.voice, new ScopedContext("voice", given), placed.item.id);
  });
}

function ofClaims(kept: Kept<OwnBatch>, studio: StudioRules, known: KnownParts, at: SpokenPlace): OwnBatch {
  const { item, index } = at.placed;
  if (!claimsAnything(studio, item)) return NOTHING_FOUND;
  const reads: unknown[] = [studio, item, at.own, sinceBefore(at), ...at.around.map((span) => span.own)];
  pushClaimed(reads, studio, known, at);
  return kept.get(reads, () => {
    const { setups } = known;
    const plan = { ...setups, items: setups.items.map((one, n) => (n === index ? item : one)) };
    const moves = wordlessMoves(setups).map((other, n) => (n === at.n ? { ...at.placed, row: at.own } : other));
    const place = ownPlace(studio, at);
    const given = { plan, moves, track: () => trackOf(at), ...(place ? { placeOf: () => place } : {}) };
    return ownBatchOf(studio.reading.claims, new ScopedContext("claims", given), item.id);
  });
}

/** What claims are held against, besides the item itself: nothing where there are none. */
function pushClaimed(reads: unknown[], studio: StudioRules, { setups }: KnownParts, at: MovePlace): void {
  if (!claimsAnything(studio, at.placed.item)) return;
  reads.push(setups);
  const place = ownPlace(studio, at);
  if (place) reads.push(place.classFrom, place.classTo, place.workTo, place.blockFrom, place.blockTo);
}

/** Where the item stands, from the start of its work, if it claims anything about that. */
function ownPlace(studio: StudioRules, { placed, place }: MovePlace): PlaceInClass | undefined {
  if (!place || !claimsTimes(studio, placed.item)) return undefined;
  const from = (seconds: number): number => tenth(seconds - placed.row.start);
  return {
    ...{ classFrom: from(place.classFrom), classTo: from(place.classTo), workTo: from(place.workTo) },
    ...{ blockFrom: from(place.blockFrom), blockTo: from(place.blockTo) },
  };
}

/** The moves of the class without words and times, which all items with claims share. */
const wordlessMoves = perValue((setups: Plan) => placedMoves(setups, undefined));

const claimsAnything = ({ claims }: StudioRules, item: MoveItem): boolean => claims.some((read) => read.anything(item));
const claimsTimes = ({ claims }: StudioRules, item: MoveItem): boolean => claims.some((read) => read.times(item));

/** Seconds from the start of the work before it, else of the class. */
const sinceBefore = ({ placed, before }: MovePlace): number => tenth(placed.row.start - (before?.row.start ?? 0));

const earlierBy = (row: ClockRow, seconds: number): ClockRow => ({
  ...row,
  transitionFrom: tenth(row.transitionFrom - seconds),
  start: tenth(row.start - seconds),
  end: tenth(row.end - seconds),
});

/** In seconds from the start of the item's work, with which the second span begins. */
function trackOf({ around, ...at }: SpokenPlace): CueTrack {
  const [into, during] = around.map(({ own }) => own);
  return {
    ...NOTHING_SAID,
    cues: [...cuesLater(into?.cues ?? [], -sinceBefore(at)), ...(during?.cues ?? [])],
    dropped: [...(into?.dropped ?? []), ...(during?.dropped ?? [])],
  };
}

function fewItems(frame: Plan, { moves }: Plan, items: readonly PlanItem[]): Plan {
  const few: Plan["moves"] = {};
  for (const item of items) {
    const move = item.kind === "move" ? own(moves, item.move) : undefined;
    if (item.kind === "move" && move) few[item.move] = move;
  }
  return { ...frame, moves: few, items: [...items] };
}
