/**
 * A rehearsal compared with the plan as it is now: which changes still match, what the coach's own seconds would be in the
 * plan, and how fast the coach speaks. Matched by item, never by place.
 */

import { classClock } from "#lib/clock/clock.ts";
import { NOISE, tenth } from "#lib/numbers/round.ts";
import { isMoveItem, itemById } from "#lib/plan/lookup.ts";
import type { Plan } from "#lib/plan/schema.ts";
import { syllablesOfText } from "#lib/talk/syllables.ts";
import { SPEECH_DEFAULTS } from "#lib/talk/talk.ts";
import { changesInto } from "#lib/transitions/transitions.ts";
import type { Rehearsed } from "./rehearsed-schema.ts";

/** Why a rehearsed change cannot be taken into the plan as it is now. */
export type NoMatch = "item-gone" | "other-move-before" | "other-set-up";

export interface ChangeTake {
  readonly item: string;
  /** Seconds planned when it was rehearsed, and what it took. */
  readonly planned: number;
  readonly took: number;
  /** What the plan has now: its author's seconds, else what it takes to do and to tell. */
  readonly now: number;
  /** What its actions add up to in the plan now: what a room full of people needs. */
  readonly estimate: number;
  /** Whole seconds, rounded up so that rounding hurries nobody. */
  readonly to: number;
  readonly noMatch: NoMatch | null;
  /** A coach alone is quicker than a room, so less than the estimate is not suggested. */
  readonly belowEstimate: boolean;
}
interface RateTake {
  /** Syllables a second: the plan's rate, and the coach's own to the tenth. */
  readonly now: number;
  readonly to: number;
  /** How many lines and syllables it was measured over. */
  readonly lines: number;
  readonly syllables: number;
}
export interface RehearsalTake {
  readonly changes: readonly ChangeTake[];
  /** Null when too little was said. */
  readonly rate: RateTake | null;
  /** Lines whose tap came much too late or too soon: nobody speaks so slowly or so fast. */
  readonly strangeLines: number;
}

/** Outside these a tap came late or early. Syllables a second; talk runs at 3.3 to 5.9, see `lib/talk/talk.ts`. */
const POSSIBLE = { least: 1.5, most: 9 } as const;
/** Fewer lines or syllables say little about how somebody speaks (common practice, no source). */
const ENOUGH = { lines: 5, syllables: 40 } as const;

export function rehearsalTake(plan: Plan, { changes, lines }: Rehearsed): RehearsalTake {
  const rows = new Map(classClock(plan).rows.map((row) => [row.item, row]));
  const alone = changesInto({ ...plan, people: 1 });
  const moves = plan.items.filter(isMoveItem).map(({ id }) => id);
  const takes = changes.map((change): ChangeTake => {
    const { item, planned, took } = change;
    const row = rows.get(item);
    const estimate = row?.transition.estimate ?? change.estimate;
    const to = Math.ceil(took - NOISE);
    const ofOne = alone.get(item)?.estimate ?? change.estimate;
    const noMatch = noMatchOf(change, itemById(plan, item)?.kind === "move", ofOne, moves[moves.indexOf(item) - 1]);
    const now = row?.transition.planned ?? Math.max(estimate, row?.transition.telling ?? 0);
    return { item, planned, took, now, estimate, to, noMatch, belowEstimate: to < estimate };
  });
  return { changes: takes, ...rateOf(plan, lines) };
}

function noMatchOf(
  change: Rehearsed["changes"][number],
  there: boolean,
  estimate: number,
  before: string | undefined,
): NoMatch | null {
  if (!there) return "item-gone";
  if ((before ?? null) !== change.after) return "other-move-before";
  return estimate === change.estimate ? null : "other-set-up";
}

/** All syllables over all the time they took, without the plan's pause after each line. */
function rateOf(plan: Plan, lines: Rehearsed["lines"]): Pick<RehearsalTake, "rate" | "strangeLines"> {
  const pause = plan.speech?.pauseSeconds ?? SPEECH_DEFAULTS.pauseSeconds;
  const said = lines.map(({ text, took }) => ({ syllables: syllablesOfText(text), seconds: took - pause }));
  const real = said.filter(({ syllables, seconds }) => {
    const rate = syllables / seconds;
    return seconds > 0 && rate >= POSSIBLE.least && rate <= POSSIBLE.most;
  });
  const syllables = real.reduce((sum, line) => sum + line.syllables, 0);
  const seconds = real.reduce((sum, line) => sum + line.seconds, 0);
  const strangeLines = said.length - real.length;
  if (real.length < ENOUGH.lines || syllables < ENOUGH.syllables) return { rate: null, strangeLines };
  const now = plan.speech?.syllablesPerSecond ?? SPEECH_DEFAULTS.syllablesPerSecond;
  const to = tenth(syllables / seconds);
  return { rate: { now, to, lines: real.length, syllables }, strangeLines };
}

export interface Chosen {
  /** Items whose change is taken. */
  readonly items: ReadonlySet<string>;
  readonly rate: boolean;
}

/** What is ticked at first: whatever matches the plan, is not below the estimate and changes something. */
export function suggestedChoice({ changes, rate }: RehearsalTake): Chosen {
  const fit = changes.filter((c) => c.noMatch === null && !c.belowEstimate && c.to !== c.now);
  return { items: new Set(fit.map(({ item }) => item)), rate: rate !== null && rate.to !== rate.now };
}

/** The plan with the chosen seconds and rate. What does not match is never taken. */
export function withTaken(plan: Plan, take: RehearsalTake, chosen: Chosen): Plan {
  const to = new Map(takenChanges(take, chosen).map((change) => [change.item, change.to]));
  const items = plan.items.map((item) => {
    const seconds = to.get(item.id);
    return item.kind === "move" && seconds !== undefined ? { ...item, transitionSeconds: seconds } : item;
  });
  if (!chosen.rate || !take.rate) return { ...plan, items };
  return { ...plan, items, speech: { ...plan.speech, syllablesPerSecond: take.rate.to } };
}

export const takenChanges = ({ changes }: RehearsalTake, { items }: Chosen): ChangeTake[] =>
  changes.filter((change) => change.noMatch === null && items.has(change.item) && change.to !== change.now);
