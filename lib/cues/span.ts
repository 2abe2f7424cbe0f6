/**
 * From the start of one move to the start of the next: the stretch of a class in which lines are placed. A span counts its
 * seconds from its own beginning and knows nothing but what is named here, so that it stays as it was placed wherever in
 * the class it comes to stand.
 */
import type { ClassClock, ClockRow } from "#lib/clock/clock.ts";
import type { Reads } from "#lib/memo/kept.ts";
import { moveName } from "#lib/plan/format.ts";
import { own } from "#lib/plan/lookup.ts";
import type { MoveItem, Plan, PlanItem } from "#lib/plan/schema.ts";
import type { Placed } from "./windows.ts";

export interface Span {
  /** The item it begins with; none: the class itself. */
  readonly key: string;
  /** Seconds from the start of the class to its beginning. */
  readonly origin: number;
  /** The head, the machines and the moves of this span; no items. */
  readonly plan: Plan;
  /** Seconds from its beginning to the end of the class; null where no line of it tells the minutes that are left. */
  readonly classLeft: number | null;
  readonly work: Placed | undefined;
  readonly next: Placed | undefined;
  /** The move after `next`: only its name is asked for. */
  readonly after: MoveItem | undefined;
  /** What the heads-up calls: the first item after the work that takes time. */
  readonly called: PlanItem | undefined;
  /** All of the above but where it begins. */
  readonly reads: Reads;
}

/** What spans are cut from. `frame`: head and machines, the same value while they are the same. */
export interface SpanSource {
  readonly frame: Plan;
  readonly plan: Plan;
  readonly clock: ClassClock;
}

/** One more than there are moves. */
export function spansOf({ frame, plan, clock }: SpanSource): Span[] {
  const moves = plan.items.flatMap((item, i): PlacedAt[] => {
    const row = clock.rows[i];
    return item.kind === "move" && row ? [{ item, row, at: i }] : [];
  });
  const called = firstTimedAfterEach(plan.items);
  return [undefined, ...moves].map((work, n) =>
    spanOf({
      ...{ frame, total: clock.total, moves: plan.moves, work, next: moves[n], after: moves[n + 1]?.item },
      called: work && called[work.at],
    }),
  );
}

/** For each place of the list the first item after it that takes time. */
function firstTimedAfterEach(items: readonly PlanItem[]): (PlanItem | undefined)[] {
  const after: (PlanItem | undefined)[] = [];
  let next: PlanItem | undefined;
  for (let place = items.length - 1; place >= 0; place--) {
    after[place] = next;
    const item = items[place];
    if (item && item.kind !== "heading") next = item;
  }
  return after;
}

interface PlacedAt extends Placed {
  readonly at: number;
}
interface Around {
  readonly frame: Plan;
  readonly moves: Plan["moves"];
  readonly total: number;
  readonly work: Placed | undefined;
  readonly next: Placed | undefined;
  readonly after: MoveItem | undefined;
  readonly called: PlanItem | undefined;
}

function spanOf({ frame, moves, total, work, next, after, called }: Around): Span {
  const origin = work?.row.start ?? 0;
  const known = [work?.item, next?.item, after].map((item) => item && own(moves, item.move));
  const placed = [work, next].map((one) => one && shifted(one, origin));
  const classLeft = [work, next].some((one) => one && tellsMinutes(one.item)) ? tenth(total - origin) : null;
  const plan = { ...frame, moves: movesOf([work?.item, next?.item, after], moves) };
  const afterName = after && moveName(plan, after);
  const reads = [
    ...[frame, work?.item, next?.item, called === next?.item ? "next" : called, afterName, classLeft],
    ...[known[0], known[1], ...placed.flatMap((one) => (one ? timesOf(one.row) : [null]))],
  ];
  const [ownWork, ownNext] = placed;
  return { key: work?.item.id ?? "", origin, plan, classLeft, work: ownWork, next: ownNext, after, called, reads };
}

function movesOf(items: readonly (MoveItem | undefined)[], moves: Plan["moves"]): Plan["moves"] {
  const few: Plan["moves"] = {};
  for (const item of items) {
    const move = item && own(moves, item.move);
    if (item && move) few[item.move] = move;
  }
  return few;
}

const timesOf = ({ transitionFrom, start, end }: ClockRow): number[] => [transitionFrom, start, end];

const shifted = ({ item, row }: Placed, origin: number): Placed => ({
  item,
  row: {
    ...row,
    transitionFrom: tenth(row.transitionFrom - origin),
    start: tenth(row.start - origin),
    end: tenth(row.end - origin),
  },
});

const tellsMinutes = ({ script = [] }: MoveItem): boolean => script.some(({ text }) => text.includes("{minutes-left}"));

const tenth = (seconds: number): number => Math.round(seconds * 10) / 10;
