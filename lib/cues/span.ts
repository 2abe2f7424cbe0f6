/**
 * From the start of one move to the start of the next: the stretch of a class in which lines are placed. A span counts its
 * seconds from its own beginning and knows nothing but what is named here, so that it stays as it was placed wherever in
 * the class it comes to stand.
 */

import type { ClassClock, ClockRow } from "#lib/clock/clock.ts";
import type { Reads } from "#lib/memo/kept.ts";
import { tenth } from "#lib/numbers/round.ts";
import { followingEach, own } from "#lib/plan/lookup.ts";
import type { CueKind, Move, MoveItem, Plan, PlanItem, ScriptLine } from "#lib/plan/schema.ts";
import { tellsMinutes } from "#lib/talk/talk.ts";
import type { PlacedWork } from "./windows.ts";

export interface TalkSpan {
  /** Seconds from the start of the class to its beginning. */
  readonly origin: number;
  /** Seconds from its beginning to the end of the class; null where no line of it tells the minutes that are left. */
  readonly classLeft: number | null;
  readonly work: PlacedWork | undefined;
  readonly next: PlacedWork | undefined;
  /** The move after `next`: only its name is asked for. */
  readonly after: MoveItem | undefined;
  /** What the heads-up calls: the first item after the work that takes time. */
  readonly called: PlanItem | undefined;
  /** Lines that are said in the work, and lines that set up what is next. */
  readonly lines: readonly SpokenLine[];
  readonly setupLines: readonly SpokenLine[];
  /** All of the above but where it begins. */
  readonly reads: Reads;
}

/** What spans are cut from. `frame`: head and machines, `times`: all but words, the same values while they are the same. */
export interface SpanSource {
  readonly frame: Plan;
  readonly times: Plan;
  readonly plan: Plan;
  readonly clock: ClassClock;
}

/** A move of the class with what is known of it. */
interface Known extends PlacedWork {
  /** Place among all items. */
  readonly at: number;
  readonly wordless: PlanItem | undefined;
  readonly move: Move | undefined;
}

/** Where a span lies in its class. */
export interface SpanPlace {
  /** The item it begins with; none: the class itself. */
  readonly key: string;
  readonly frame: Plan;
  readonly total: number;
  readonly work: Known | undefined;
  readonly next: Known | undefined;
  readonly after: Known | undefined;
  readonly called: PlanItem | undefined;
}

/** One more than there are moves. */
export function spanPlaces({ frame, times, plan, clock }: SpanSource): SpanPlace[] {
  const moves: Known[] = [];
  for (const [at, item] of plan.items.entries()) {
    const row = clock.rows[at];
    if (item.kind !== "move" || !row) continue;
    moves.push({ item, row, at, move: own(plan.moves, item.move), wordless: times.items[at] });
  }
  const called = followingEach(plan.items, takesTime);
  return [undefined, ...moves].map((work, n) => ({
    key: work?.item.id ?? "",
    frame,
    total: clock.total,
    work,
    next: moves[n],
    after: moves[n + 1],
    called: work && called[work.at],
  }));
}

/** Items, rows and moves as they stand: while they are the same, nothing of the span can be otherwise. */
export function spanReads({ frame, total, work, next, after, called }: SpanPlace): Reads {
  const told = isTold(work) || isTold(next) ? total : null;
  const afterName = after && nameOf(after);
  return [frame, work?.item, work?.row, work?.move, next?.item, next?.row, next?.move, called, afterName, told];
}

const takesTime = (item: PlanItem): item is Exclude<PlanItem, { kind: "heading" }> => item.kind !== "heading";
const isTold = (one: PlacedWork | undefined): boolean => one !== undefined && tellsMinutes(one.item);
const nameOf = ({ item, move }: Known): string => move?.name ?? item.move;

export function spanOf({ frame, total, work, next, after, called }: SpanPlace): TalkSpan {
  const origin = work?.row.start ?? 0;
  const [ownWork, ownNext] = [work, next].map((one) => one && shifted(one, origin));
  const classLeft = isTold(work) || isTold(next) ? tenth(total - origin) : null;
  const lines = linesOf(work, (kind) => !isOfSetup(kind));
  const setupLines = linesOf(next, isOfSetup);
  const reads = [
    ...[frame, work?.wordless, work?.move, next?.wordless, next?.move, classLeft, after && nameOf(after)],
    ...[called === next?.item ? "next" : called, lines.length, ...lines, ...setupLines],
    ...[ownWork, ownNext].flatMap((one) => (one ? timesOf(one.row) : [null])),
  ];
  return { origin, work: ownWork, next: ownNext, after: after?.item, called, classLeft, lines, setupLines, reads };
}

/** The head, the machines and the moves of a span; no items. */
export function planOfSpan({ frame, work, next, after }: SpanPlace): Plan {
  const moves: Plan["moves"] = {};
  for (const one of [work, next, after]) if (one?.move) moves[one.item.move] = one.move;
  return { ...frame, moves };
}

type SpokenLine = ScriptLine & { readonly kind: Exclude<CueKind, "crew"> };

const isOfSetup = (kind: CueKind): boolean => kind === "setup" || kind === "safety";
const linesOf = (one: PlacedWork | undefined, isWanted: (kind: CueKind) => boolean): SpokenLine[] =>
  (one?.item.script ?? []).filter((line): line is SpokenLine => line.kind !== "crew" && isWanted(line.kind));

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
