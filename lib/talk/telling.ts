/**
 * How long the set-up lines of each item take to tell: their words at the plan's rate, with a pause between two lines. It
 * lies below the clock, since a transition lasts at least as long as it takes to tell.
 */
import { Kept, KeptEach } from "#lib/memo/kept.ts";
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
    const following = followingEach(plan.items, isMoveItem);
    const told: [string, number][] = [];
    let isFirst = true;
    for (const [at, item] of plan.items.entries()) {
      if (item.kind !== "move") continue;
      const next = following[at];
      const reads = [frame, item, moveOf(plan, item), next && moveName(plan, next)];
      if (!isFirst) told.push([item.id, this.items.get(item.id, reads, () => this.ofItem(plan, item, next))]);
      isFirst = false;
    }
    return this.whole.get(told.flat(), () => new Map(told));
  }

  private ofItem(plan: Plan, item: MoveItem, next: MoveItem | undefined): number {
    // The end of the class depends on what is counted here, so minutes left count as all minutes of the slot.
    const moment = { item, next, secondsLeft: item.seconds, classSecondsLeft: plan.lengthSeconds };
    const lines = (item.script ?? []).filter(({ kind }) => kind === "setup");
    const counts = lines.map(({ text }) => this.counter.ofText(spokenText(plan, text, moment))).filter((n) => n > 0);
    if (counts.length === 0) return 0;
    const { syllablesPerSecond, pauseSeconds } = speechOf(plan);
    const syllables = counts.reduce((sum, n) => sum + n, 0);
    return Math.ceil(syllables / syllablesPerSecond + (counts.length - 1) * pauseSeconds - NOISE) + 0;
  }
}

/** Counted once. */
export const tellingsOf = (plan: Plan): Tellings => new TellingCounter().of({ frame: plan, plan });
