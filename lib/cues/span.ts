/**
 * A span runs from the start of one move to the start of the next; lines are placed span by span. It counts seconds from its
 * own start and reads only what is listed here, so its placing stays valid wherever in the class it moves.
 */

import type { ClockRow } from "#lib/clock/clock.ts";
import type { KeptClock } from "#lib/clock/kept-clock.ts";
import type { Reads } from "#lib/memo/kept.ts";
import { tenth } from "#lib/numbers/round.ts";
import { followingEach, own } from "#lib/plan/lookup.ts";
import type { CueKind, Move, MoveItem, Plan, PlanItem, ScriptLine } from "#lib/plan/schema.ts";
import { tellsMinutes } from "#lib/talk/talk.ts";
import type { PlacedWork } from "./windows.ts";

export interface TalkSpan {
  /** Seconds from its start to the end of the class; null when none of its lines says how many minutes are left. */
  readonly classLeft: number | null;
  readonly work: PlacedWork | undefined;
  readonly next: PlacedWork | undefined;
  /** The move after `next`: only its name is used. */
  readonly after: MoveItem | undefined;
  /** What the heads-up announces: the first item after the work that takes time. */
  readonly called: PlanItem | undefined;
  /** Lines said during the work, and lines that set up the next move. */
  readonly lines: readonly PlacedLine[];
  readonly setupLines: readonly PlacedLine[];
  /** All of the above except where it begins. */
  readonly reads: Reads;
}

/** What spans are cut from. `frame`: head and machines; `times`: all but words. Both keep their identity while equal. */
export interface SpanSource extends KeptClock {
  readonly frame: Plan;
  readonly times: Plan;
  readonly plan: Plan;
}

/** A move item with its library move and its place. */
interface Known extends PlacedWork {
  /** Index among all items. */
  readonly at: number;
  /** Its row in seconds from the start of its work. */
  readonly ownRow: ClockRow | undefined;
  readonly wordless: PlanItem | undefined;
  readonly move: Move | undefined;
}

/** A span's place in its class. */
export interface SpanPlace {
  /** Id of the item it begins with; "" for the first span, which begins with the class. */
  readonly key: string;
  /** When it begins, in seconds from the start of the class. */
  readonly origin: number;
  readonly frame: Plan;
  readonly total: number;
  readonly work: Known | undefined;
  readonly next: Known | undefined;
  readonly after: Known | undefined;
  readonly called: PlanItem | undefined;
}

/** One span more than there are moves. */
export function spanPlaces({ frame, times, plan, clock, ownRows }: SpanSource): SpanPlace[] {
  const moves: Known[] = [];
  for (const [at, item] of plan.items.entries()) {
    const row = clock.rows[at];
    if (item.kind !== "move" || !row) continue;
    moves.push({ item, row, at, ownRow: ownRows[at], move: own(plan.moves, item.move), wordless: times.items[at] });
  }
  const called = followingEach(plan.items, takesTime);
  return [undefined, ...moves].map((work, n) => ({
    key: work?.item.id ?? "",
    origin: work?.row.start ?? 0,
    frame,
    total: clock.total,
    work,
    next: moves[n],
    after: moves[n + 1],
    called: work && called[work.at],
  }));
}

/** Everything the span depends on except where it begins: while these values are the same, so is its placing. */
export function spanReads(place: SpanPlace): Reads {
  const { frame, origin, work, next, after, called } = place;
  const untilNext = next && tenth(next.row.start - origin);
  return [
    ...[frame, work?.item, work?.ownRow, work?.move, next?.item, next?.ownRow, next?.move, untilNext],
    ...[called, after && nameOf(after), classLeftOf(place)],
  ];
}

const classLeftOf = ({ total, origin, work, next }: SpanPlace): number | null =>
  isTold(work) || isTold(next) ? tenth(total - origin) : null;

const takesTime = (item: PlanItem): item is Exclude<PlanItem, { kind: "heading" }> => item.kind !== "heading";
const isTold = (one: PlacedWork | undefined): boolean => one !== undefined && tellsMinutes(one.item);
const nameOf = ({ item, move }: Known): string => move?.name ?? item.move;

export function spanOf(place: SpanPlace): TalkSpan {
  const { frame, origin, work, next, after, called } = place;
  const [ownWork, ownNext] = [work, next].map((one) => one && shifted(one, origin));
  const classLeft = classLeftOf(place);
  const lines = linesOf(work, (line) => !isOfSetup(line));
  const setupLines = linesOf(next, isOfSetup);
  const reads = [
    ...[frame, work?.wordless, work?.move, next?.wordless, next?.move, classLeft, after && nameOf(after)],
    ...[called === next?.item ? "next" : called, lines.length],
    ...[...lines, ...setupLines].flatMap(({ line, index }) => [line, index]),
    ...[ownWork, ownNext].flatMap((one) => (one ? timesOf(one.row) : [null])),
  ];
  return { work: ownWork, next: ownNext, after: after?.item, called, classLeft, lines, setupLines, reads };
}

/** The head, the machines and the moves of a span; no items. */
export function planOfSpan({ frame, work, next, after }: SpanPlace): Plan {
  const moves: Plan["moves"] = {};
  for (const one of [work, next, after]) if (one?.move) moves[one.item.move] = one.move;
  return { ...frame, moves };
}

type SpokenLine = ScriptLine & { readonly kind: Exclude<CueKind, "crew"> };

/** A line and its index in the item's script. */
interface PlacedLine {
  readonly line: SpokenLine;
  readonly index: number;
}

/** Set-up belongs in the change whatever moment it carries; a safety line with a moment is said during the work. */
const isOfSetup = ({ kind, at }: SpokenLine): boolean => kind === "setup" || (kind === "safety" && at === undefined);
const isSpoken = (line: ScriptLine): line is SpokenLine => line.kind !== "crew";
const linesOf = (one: PlacedWork | undefined, isWanted: (line: SpokenLine) => boolean): PlacedLine[] =>
  (one?.item.script ?? []).flatMap((line, index) => (isSpoken(line) && isWanted(line) ? [{ line, index }] : []));

const timesOf = ({ transitionFrom, start, end }: ClockRow): number[] => [transitionFrom, start, end];

const shifted = ({ item, row }: PlacedWork, origin: number): PlacedWork => ({
  item,
  row: {
    ...row,
    transitionFrom: tenth(row.transitionFrom - origin),
    start: tenth(row.start - origin),
    end: tenth(row.end - origin),
  },
});
