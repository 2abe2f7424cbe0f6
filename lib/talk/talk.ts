/**
 * How long the words of a class take to say: syllables at the coach's rate, and a pause after each line. Live fields count
 * with the words that fill them.
 */

import { KeptEach } from "#lib/memo/kept.ts";
import { perValue } from "#lib/memo/per-value.ts";
import { tenth } from "#lib/numbers/round.ts";
import { moveName } from "#lib/plan/format.ts";
import { followingEach, isMoveItem, moveOf } from "#lib/plan/lookup.ts";
import type { MoveItem, Plan, ScriptLine } from "#lib/plan/schema.ts";
import { type SpokenMoment, spokenText } from "./live-words.ts";
import { SyllableCounter, syllablesOfText } from "./syllables.ts";

/**
 * Used when a plan has no rate or pause of its own. Rate: the middle of 4 to 5 syllables a second, usual for English talk
 * (range 3.3 to 5.9; a secondary source, poletoparis.com). Pause: one of the medium pauses of 0.2 to 1 s (Campione and
 * Veronis 2002, from memory); 0.4 s is common practice.
 */
export const SPEECH_DEFAULTS = { syllablesPerSecond: 4.5, pauseSeconds: 0.4 } as const;

export interface ItemTalk {
  /** Seconds of all that the coach says in the item; without crew lines, which are not said aloud. */
  readonly seconds: number;
  readonly syllables: number;
  /** Seconds available: the change into the item and its work. */
  readonly roomSeconds: number;
}

/** A plan's own rate and pause, else the defaults. */
export const speechOf = ({ speech }: Pick<Plan, "speech">): { syllablesPerSecond: number; pauseSeconds: number } => ({
  syllablesPerSecond: speech?.syllablesPerSecond ?? SPEECH_DEFAULTS.syllablesPerSecond,
  pauseSeconds: speech?.pauseSeconds ?? SPEECH_DEFAULTS.pauseSeconds,
});

/** Seconds to say a text (live fields already filled in) and pause after it; 0 for a text without words. */
export function spokenSeconds(
  plan: Plan,
  text: string,
  syllablesOf: (text: string) => number = syllablesOfText,
): number {
  return secondsOf(plan, syllablesOf(text));
}

function secondsOf(plan: Plan, syllables: number): number {
  const { syllablesPerSecond, pauseSeconds } = speechOf(plan);
  return syllables === 0 ? 0 : syllables / syllablesPerSecond + pauseSeconds;
}

/** Talk divided by the time available; infinite when there is none. */
export const talkShare = ({ seconds, roomSeconds }: ItemTalk): number =>
  roomSeconds > 0 ? seconds / roomSeconds : Number.POSITIVE_INFINITY;

/** The class on the clock, as far as talk depends on it: see `lib/clock`, which stands on this folder. Seconds. */
interface TalkTimes {
  readonly rows: readonly { readonly transitionFrom: number; readonly start: number; readonly end: number }[];
  readonly total: number;
}

/** What talk is counted from. `frame`: head and machines; keeps its identity while equal. */
interface TalkSource {
  readonly frame: Plan;
  readonly plan: Plan;
  readonly clock: TalkTimes;
}

/** The talk of every move item, by item id, with live fields filled in as of the start of the work. */
export const talkByItem = (plan: Plan, clock: TalkTimes): Map<string, ItemTalk> =>
  new TalkCounter().byItem({ frame: plan, plan, clock });

/** The talk of one plan while it is being written: an item with the same words and time is not counted again. */
export class TalkCounter {
  private readonly counter: SyllableCounter;
  private readonly items = new KeptEach<ItemTalk>();

  constructor(counter: SyllableCounter = new SyllableCounter()) {
    this.counter = counter;
  }

  byItem({ frame, plan, clock }: TalkSource): Map<string, ItemTalk> {
    this.items.round();
    const talk = new Map<string, ItemTalk>();
    const following = followingEach(plan.items, isMoveItem);
    for (const [at, item] of plan.items.entries()) {
      const row = clock.rows[at];
      if (item.kind !== "move" || !row) continue;
      const next = following[at];
      const classSecondsLeft = tellsMinutes(item) ? clock.total - row.start : 0;
      const roomSeconds = tenth(row.end - row.transitionFrom);
      const reads = [frame, item, moveOf(plan, item), next && moveName(plan, next), classSecondsLeft, roomSeconds];
      const ofItem = () => this.ofItem(plan, { item, next, secondsLeft: item.seconds, classSecondsLeft }, roomSeconds);
      talk.set(item.id, this.items.get(item.id, reads, ofItem));
    }
    return talk;
  }

  private ofItem(plan: Plan, moment: SpokenMoment, roomSeconds: number): ItemTalk {
    const lines = (moment.item.script ?? []).filter(isSaid).map((line) => spokenText(plan, line.text, moment));
    const counts = lines.map(this.counter.ofText);
    const seconds = counts.reduce((sum, syllables) => sum + secondsOf(plan, syllables), 0);
    return { seconds, syllables: counts.reduce((sum, syllables) => sum + syllables, 0), roomSeconds };
  }
}

/** Whether a line of the item says how many minutes of the class are left. */
export const tellsMinutes = perValue(({ script = [] }: MoveItem): boolean =>
  script.some(({ text }) => text.includes("{minutes-left}")),
);
const isSaid = (line: ScriptLine): boolean => line.kind !== "crew";
