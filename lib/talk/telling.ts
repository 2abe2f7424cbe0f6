/**
 * How long the set-up lines of each item take to tell: their words at the plan's rate, with a pause between two lines. It
 * lies below the clock, since a transition lasts at least as long as it takes to tell.
 */
import { Kept, KeptEach, type Reads } from "#lib/memo/kept.ts";
import { perValue } from "#lib/memo/per-value.ts";
import { NOISE } from "#lib/numbers/round.ts";
import { moveName } from "#lib/plan/format.ts";
import { followingEach, isMoveItem, moveOf } from "#lib/plan/lookup.ts";
import type { MoveItem, Plan } from "#lib/plan/schema.ts";
import { spokenText } from "./live-words.ts";
import { SyllableCounter } from "./syllables.ts";
import { speechOf } from "./talk.ts";

/** Whole seconds by item id. No entry for the first move, which is set up during the opening. */
export type Tellings = ReadonlyMap<string, number>;

/** `frame`: head and machines; keeps its identity while equal. */
interface TellingSource {
  readonly frame: Plan;
  readonly plan: Plan;
}

/** The telling of one plan while it is being written: an item with the same words is not counted again. */
export class TellingCounter {
  private readonly counter: SyllableCounter;
  private readonly items = new KeptEach<number>();
  private readonly whole = new Kept<Tellings>();

  constructor(counter: SyllableCounter = new SyllableCounter()) {
    this.counter = counter;
  }

  /** The same value while all seconds are the same. */
  of({ frame, plan }: TellingSource): Tellings {
    this.items.round();
    const told = tellingRows(plan, this.counter, (item, reads, count) =>
      this.items.get(item.id, [frame, item, ...reads], count),
    );
    return this.whole.get(told.flat(), () => new Map(told));
  }
}

/** `keep`: a count, or the one kept for an item while the plan's head and `reads` stay the same. */
type Keep = (item: MoveItem, reads: Reads, count: () => number) => number;

function tellingRows(plan: Plan, counter: SyllableCounter, keep: Keep): [string, number][] {
  const following = followingEach(plan.items, isMoveItem);
  const told: [string, number][] = [];
  let isFirst = true;
  for (const [at, item] of plan.items.entries()) {
    if (item.kind !== "move") continue;
    const next = following[at];
    const reads = [moveOf(plan, item), next && moveName(plan, next)];
    if (!isFirst) told.push([item.id, keep(item, reads, () => secondsToTell(plan, counter, item, next))]);
    isFirst = false;
  }
  return told;
}

function secondsToTell(plan: Plan, counter: SyllableCounter, item: MoveItem, next: MoveItem | undefined): number {
  // The end of the class depends on what is counted here, so minutes left count as all minutes of the slot.
  const moment = { item, next, secondsLeft: item.seconds, classSecondsLeft: plan.lengthSeconds };
  const lines = (item.script ?? []).filter(({ kind }) => kind === "setup");
  const counts = lines.map(({ text }) => counter.ofText(spokenText(plan, text, moment))).filter((n) => n > 0);
  if (counts.length === 0) return 0;
  const { syllablesPerSecond, pauseSeconds } = speechOf(plan);
  const syllables = counts.reduce((sum, n) => sum + n, 0);
  return Math.ceil(syllables / syllablesPerSecond + (counts.length - 1) * pauseSeconds - NOISE) + 0;
}

const keptSeconds = perValue((_: MoveItem) => new Kept<number>());

/** Of any plan. The items that it shares with another whose head is the same are not counted again: what mends a time tries many plans. */
export function tellingsOf(plan: Plan): Tellings {
  const { items: _, ...head } = plan;
  // With their names: two heads may have the same value under different ones.
  const frame = Object.entries(head).flat();
  const counter = new SyllableCounter();
  return new Map(
    tellingRows(plan, counter, (item, reads, count) => keptSeconds(item).get([...frame, ...reads], count)),
  );
}
