/**
 * How long the words of a class take to say: syllables at the coach's own rate and a pause after each line. Live
 * fields count with the words they would say.
 */
import { classClock } from "#lib/clock/clock.ts";
import { isMoveItem } from "#lib/plan/lookup.ts";
import type { MoveItem, Plan, ScriptLine } from "#lib/plan/schema.ts";
import { spokenText } from "./live-words.ts";
import { syllablesOfText } from "./syllables.ts";

export { fieldWords, type Moment, spokenText } from "./live-words.ts";

/**
 * Where a plan says nothing. Rate: English talk runs at 4 to 5 syllables a second (range 3.3 to 5.9; a secondary source,
 * poletoparis.com), the middle taken. Pause: among the medium pauses of 0.2 to 1 s (Campione and Veronis 2002, from
 * memory); 0.4 s is common practice.
 */
export const SPEECH_DEFAULTS = { syllablesPerSecond: 4.5, pauseSeconds: 0.4 } as const;

export interface ItemTalk {
  /** Seconds of everything the coach says in the item; lines for the crew are not said aloud. */
  readonly seconds: number;
  readonly syllables: number;
  /** Seconds there are: the change into the item and its work. */
  readonly roomSeconds: number;
}

/** How a plan is spoken: its own rate and pause, else the defaults. */
export const speechOf = ({ speech }: Pick<Plan, "speech">): { syllablesPerSecond: number; pauseSeconds: number } => ({
  syllablesPerSecond: speech?.syllablesPerSecond ?? SPEECH_DEFAULTS.syllablesPerSecond,
  pauseSeconds: speech?.pauseSeconds ?? SPEECH_DEFAULTS.pauseSeconds,
});

/** Seconds to say a text, its live fields filled, and pause after it; 0 for a text without words. */
export function spokenSeconds(plan: Plan, text: string): number {
  const syllables = syllablesOfText(text);
  const { syllablesPerSecond, pauseSeconds } = speechOf(plan);
  return syllables === 0 ? 0 : syllables / syllablesPerSecond + pauseSeconds;
}

/** Talk divided by the time there is for it; infinite where there is none. */
export const talkShare = ({ seconds, roomSeconds }: ItemTalk): number =>
  roomSeconds > 0 ? seconds / roomSeconds : Number.POSITIVE_INFINITY;

/** The talk of one item. */
export function itemTalk(plan: Plan, item: MoveItem): ItemTalk {
  return talkByItem(plan).get(item.id) ?? { seconds: 0, syllables: 0, roomSeconds: item.seconds };
}

/** The talk of every move item, by item id, its live fields as they stand when the work begins. */
export function talkByItem(plan: Plan): Map<string, ItemTalk> {
  const { rows, total } = classClock(plan);
  const rowOf = new Map(rows.map((row) => [row.item, row]));
  const moves = plan.items.filter(isMoveItem);
  return new Map(
    moves.flatMap((item, i): [string, ItemTalk][] => {
      const row = rowOf.get(item.id);
      if (!row) return [];
      const moment = { item, next: moves[i + 1], secondsLeft: item.seconds, classSecondsLeft: total - row.start };
      const lines = (item.script ?? []).filter(isSaid).map((line) => spokenText(plan, line.text, moment));
      const seconds = lines.reduce((sum, line) => sum + spokenSeconds(plan, line), 0);
      const syllables = lines.reduce((sum, line) => sum + syllablesOfText(line), 0);
      return [[item.id, { seconds, syllables, roomSeconds: row.end - row.transitionFrom }]];
    }),
  );
}

const isSaid = (line: ScriptLine): boolean => line.kind !== "crew";
