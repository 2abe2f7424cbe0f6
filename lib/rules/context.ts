/** What a rule is given: as much of a plan as it declares to read, and nothing else. */
import { type Balance, balance } from "#lib/balance/balance.ts";
import { type ClassClock, type ClockRow, classClock } from "#lib/clock/clock.ts";
import { cueTrack } from "#lib/cues/cue-track.ts";
import type { CueTrack } from "#lib/cues/types.ts";
import { blockNumbers } from "#lib/plan/blocks.ts";
import { moveOf } from "#lib/plan/lookup.ts";
import type { Move, MoveItem, Plan, PlanItem } from "#lib/plan/schema.ts";
import { type SetupStep, walkSetups } from "#lib/transitions/walk.ts";
import type { PlacedMove, PlaceInClass, RuleContext, RuleReads } from "./define/types.ts";

export const NOTHING_SAID: CueTrack = { cues: [], dropped: [], talkSeconds: 0, talkShare: 0 };
/** More than a plan file allows for one change and one move. */
const LONGEST_SECONDS = 40_000;

/** A damaged plan may have times that are not numbers; no cue can be placed in those. */
export const hasUsableTimes = (plan: Plan, { rows, total }: ClassClock): boolean =>
  [total, plan.headsUpSeconds ?? 0, plan.countInSeconds ?? 0].every(Number.isFinite) &&
  rows.every(
    ({ transitionFrom, start, end }) =>
      start >= transitionFrom && end >= start && end - transitionFrom <= LONGEST_SECONDS,
  );

/** A context over the whole plan, for running one rule by itself. Nothing is left out and nothing is cached. */
export function ruleContext(plan: Plan): RuleContext {
  const clock = classClock(plan);
  const moves = placedMoves(plan, clock.rows);
  const places = placesInClass(plan.items, clock);
  return new ScopedContext("everything", {
    ...{ plan, ...clock, moves, earlier: earlierInBlocks(plan, moves), placeOf: ({ index }) => places[index] },
    balance: () => balance(plan),
    steps: () => walkSetups(plan),
    track: () => (hasUsableTimes(plan, clock) ? cueTrack(plan) : NOTHING_SAID),
  });
}

/** `rows` is undefined where the reader may not see times. */
export function placedMoves(plan: Plan, rows: readonly ClockRow[] | undefined): PlacedMove[] {
  const moves: PlacedMove[] = [];
  for (const [index, item] of plan.items.entries()) {
    if (item.kind !== "move") continue;
    const row = rows?.[index];
    moves.push(row ? { item, move: moveOf(plan, item), row, index } : new Untimed(item, moveOf(plan, item), index));
  }
  return moves;
}

/** For each move, the seconds of the longest item of the same move before it in its block; 0 for none. */
export function earlierInBlocks(plan: Plan, moves: readonly PlacedMove[]): number[] {
  const blocks = blockNumbers(plan.items);
  const longest = new Map<string, number>();
  return moves.map(({ item, index }) => {
    const key = `${blocks[index]} ${item.move}`;
    const earlier = longest.get(key) ?? 0;
    longest.set(key, Math.max(earlier, item.seconds));
    return earlier;
  });
}

/** For each item where it stands, in seconds from the start of the class. */
export function placesInClass(items: readonly PlanItem[], { rows, total }: ClassClock): PlaceInClass[] {
  const ofClass = { classFrom: 0, classTo: total, workTo: rows.at(-1)?.end ?? 0 };
  let block = { blockFrom: 0, blockTo: 0 };
  let isEmpty = true;
  const blocks = items.map(({ kind }, at) => {
    const row = rows[at];
    if (kind === "heading") [block, isEmpty] = [{ blockFrom: 0, blockTo: 0 }, true];
    if (kind === "move" && row) {
      if (isEmpty) block.blockFrom = row.start;
      block.blockTo = row.end;
      isEmpty = false;
    }
    return block;
  });
  return blocks.map((one) => ({ ...ofClass, ...one }));
}

class Untimed implements PlacedMove {
  readonly item: MoveItem;
  readonly move: Move | undefined;
  readonly index: number;

  constructor(item: MoveItem, move: Move | undefined, index: number) {
    this.item = item;
    this.move = move;
    this.index = index;
  }

  get row(): ClockRow {
    return refuse("the times of a move here");
  }
}

/** What a reader may look at. Functions are called at most once, on first use. */
interface Given {
  readonly plan: Plan;
  readonly moves: readonly PlacedMove[];
  readonly rows?: readonly ClockRow[];
  readonly total?: number;
  readonly balance?: () => Balance;
  readonly steps?: () => readonly SetupStep[];
  readonly track?: () => CueTrack;
  /** By place among the moves. */
  readonly earlier?: readonly number[];
  readonly placeOf?: (placed: PlacedMove) => PlaceInClass | undefined;
}

export class ScopedContext implements RuleContext {
  readonly plan: Plan;
  readonly moves: readonly PlacedMove[];
  private readonly reads: RuleReads | "everything";
  private readonly given: Given;
  private made: { balance?: Balance; steps?: readonly SetupStep[]; track?: CueTrack } = {};

  constructor(reads: RuleReads | "everything", given: Given) {
    this.reads = reads;
    this.given = given;
    this.plan = given.plan;
    this.moves = given.moves;
  }

  get rows(): readonly ClockRow[] {
    return this.given.rows ?? this.refuse("rows");
  }
  get total(): number {
    return this.given.total ?? this.refuse("total");
  }
  get balance(): Balance {
    this.made.balance ??= this.given.balance?.() ?? this.refuse("balance");
    return this.made.balance;
  }
  get steps(): readonly SetupStep[] {
    this.made.steps ??= this.given.steps?.() ?? this.refuse("steps");
    return this.made.steps;
  }
  get track(): CueTrack {
    this.made.track ??= this.given.track?.() ?? this.refuse("track");
    return this.made.track;
  }

  earlierSeconds(placed: PlacedMove): number {
    const earlier = this.given.earlier ?? this.refuse("earlierSeconds");
    return earlier[this.moves.indexOf(placed)] ?? 0;
  }

  placeInClass(placed: PlacedMove): PlaceInClass {
    return this.given.placeOf?.(placed) ?? this.refuse("placeInClass");
  }

  private refuse(what: string): never {
    return refuse(`"${what}" when it reads "${this.reads}"`);
  }
}

/** Only a mistake in a rule gets here; the first test that runs it fails. */
function refuse(what: string): never {
  throw new Error(`A rule may not read ${what}. Declare it in "reads".`);
}
