/**
 * The ways to end a class on time, with what each costs: new seconds for the rest of the work, or for the closing alone.
 * If neither is enough: both together, which may still end late.
 */

import type { Card } from "#lib/card/schema.ts";
import { tenth } from "#lib/numbers/round.ts";
import { headSeconds } from "#lib/plan/lookup.ts";
import type { Plan } from "#lib/plan/schema.ts";
import { endOnTimeAt, retimeEvent } from "./acts.ts";
import { endOnTime, type Retimed } from "./end-on-time.ts";
import { FLOOR_SENTENCES } from "./floor-sentences.ts";
import type { FloorEvent, FloorLog } from "./log.ts";
import { floorNow, latenessAt, positionAt } from "./now.ts";
import { previewOf, type RetimePreview } from "./preview.ts";
import { minutesSeconds } from "./time-words.ts";

/**
 * Seconds that a closing keeps, as people get off the springs and sit up before they leave (common practice, no source).
 * A closing planned shorter keeps what it has.
 */
export const LEAST_CLOSING = 30;

export type WayId = "rest" | "closing" | "both";
export interface EndingOption extends RetimePreview {
  readonly id: WayId;
  readonly answer: Retimed;
  /** Seconds by which the class still ends late. */
  readonly lateBy: number;
  /** "Ends on time.", "Still ends 0:40 late." */
  readonly ends: string;
}
export interface Ways {
  /** At most two; the key takes the first. */
  readonly ways: readonly EndingOption[];
  /** A sentence to stand above the ways; "" when there is nothing to say. */
  readonly say: string;
}

const SAME: Retimed = { possible: true, changed: [], dropped: [], uneven: [], unlocked: [], closingSeconds: 0 };
/** Less than this counts as on time. Seconds. */
const ENOUGH = 1;

/** The ways at `at`, worked out anew. */
export function waysAt(card: Card, log: FloorLog, at: number): Ways {
  const { plan } = floorNow(card, log);
  const late = latenessAt(card, log, at);
  const asWay = (id: WayId, answer: Retimed): EndingOption => {
    const lateBy = Math.max(0, latenessAt(card, [...log, retimeEvent(answer, at)], at));
    const ends = lateBy < ENOUGH ? FLOOR_SENTENCES.endsOnTime : FLOOR_SENTENCES.stillLate(minutesSeconds(lateBy));
    return { id, answer, lateBy, ends, ...previewOf(plan, answer) };
  };
  const rest = endOnTimeAt(card, log, at);
  const least = leastClosing(card, log, at);
  const closing = headSeconds(plan, "closingSeconds");
  const alone = asWay("closing", { ...SAME, closingSeconds: tenth(Math.max(least, closing - late)) });
  if (rest.possible) return asked([asWay("rest", rest), alone], late);
  if (alone.lateBy < ENOUGH) return asked([alone], late);
  return asked([asWay("both", bestOfBoth(card, log, at, plan)), alone], late);
}

function asked(all: readonly EndingOption[], late: number): Ways {
  const ways = all.filter(({ takes }) => takes);
  const best = Math.min(...ways.map(({ lateBy }) => lateBy));
  if (ways.length === 0) {
    return {
      ways,
      say: late < ENOUGH ? FLOOR_SENTENCES.alreadyOnTime : FLOOR_SENTENCES.nothingToShorten(minutesSeconds(late)),
    };
  }
  if (best < ENOUGH) return { ways, say: "" };
  return { ways, say: FLOOR_SENTENCES.atBestLate(minutesSeconds(best)) };
}

/** As near to the due end as possible: shortest work, everything left out that may be, shortest closing. */
function bestOfBoth(card: Card, log: FloorLog, at: number, plan: Plan): Retimed {
  const { position, startedAt } = positionAt(card, log, at);
  const spare = headSeconds(plan, "closingSeconds") - leastClosing(card, log, at);
  const secondsLeft = card.clock.total - (at - (startedAt ?? at)) / 1000 + spare;
  const first = endOnTime(plan, position, secondsLeft);
  // Still over: the earliest end that has an answer is later by exactly that much.
  const best = first.possible ? first : endOnTime(plan, position, secondsLeft + first.overBy + 0.1);
  if (!best.possible) return { ...SAME, closingSeconds: headSeconds(plan, "closingSeconds") - spare };
  return { ...best, closingSeconds: tenth(best.closingSeconds - spare) };
}

/** Seconds: no less than it has already had, no more than it has now. */
function leastClosing(card: Card, log: FloorLog, at: number): number {
  const { plan, steps } = floorNow(card, log);
  const { position } = positionAt(card, log, at);
  const closing = headSeconds(plan, "closingSeconds");
  const from = steps.find(({ phase }) => phase === "closing")?.from ?? Number.POSITIVE_INFINITY;
  const had = position > from ? position - from + headSeconds(plan, "countInSeconds") : 0;
  return Math.min(closing, Math.max(LEAST_CLOSING, had));
}

/** The event that takes a way at `at`; null when that way is no longer offered. */
export function wayEvent(card: Card, log: FloorLog, id: WayId | null, at: number): FloorEvent | null {
  const { ways } = waysAt(card, log, at);
  const way = id === null ? ways[0] : ways.find((one) => one.id === id);
  return way ? retimeEvent(way.answer, at) : null;
}
