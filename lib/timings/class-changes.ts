/**
 * What the classes taught say about how long changes of set-up really take. The floor runs by its clock, so a change that
 * took what it was given says nothing: nobody knows when people were ready in it. Only a touch of the coach does.
 */
import type { Card } from "#lib/card/schema.ts";
import type { ClassLog, ClassLogRow } from "#lib/floor/class-log-schema.ts";
import { isMoveItem } from "#lib/plan/lookup.ts";
import type { MoveItem } from "#lib/plan/schema.ts";
import { changeBetween, setupOf } from "#lib/transitions/transitions.ts";
import type { TimedChange } from "./studio-seconds.ts";

/** Shorter holds are a slip of the finger. Seconds. */
const A_HOLD = 2;
/** The clock is written in tenths, and a touch is not exact: less than this early is on time. Seconds. */
const EARLY = 0.5;
/** Work that got less was passed by, not done: how it was set up, nobody knows. Seconds. */
const DONE = 5;
/** Sums of tenths. Seconds. */
const ROUNDING = 0.2;
/** Rows of a log may add up to its length with this much rounding each. Seconds. */
const ROUNDING_OF_ROW = 0.1;

/**
 * The changes of one class whose true length its log tells: a change that was passed on early by *next* (people were
 * ready), one held in, or one after which the work was held as it had only just begun (they were not). A change tells
 * nothing when it ran by the clock, when it was gone through twice, when there was a pause before it in which people
 * may have set up already, or when the work before or after it was passed by. Counted from the set-up that was really
 * done before. A rehearsal has no people to wait for, and a log that does not fit its own card is not believed.
 */
export function classChanges(card: Pick<Card, "plan" | "clock">, log: ClassLog): TimedChange[] {
  if (log.kind !== "class" || !fitsCard(card, log)) return [];
  const rows = new Map(log.rows.map((row) => [keyOf(row), row]));
  const changes: TimedChange[] = [];
  let before: { readonly item: MoveItem; readonly work: ClassLogRow } | null = null;
  let rested = false;
  for (const item of card.plan.items) {
    if (item.kind === "pause") rested ||= tookAny(rows.get(`pause ${item.id}`));
    if (!isMoveItem(item)) continue;
    const work = rows.get(`work ${item.id}`);
    if (!work || !tookAny(work)) continue; // left out: what comes next is changed into from the move before
    const seconds = rested || !before ? null : trueSeconds(rows.get(`change ${item.id}`), before.work, work);
    const change = before ? changeBetween(card.plan, setupOf(card.plan, before.item), setupOf(card.plan, item)) : null;
    if (seconds !== null && change && change.estimate > 0) changes.push({ actions: change.actions, seconds });
    before = { item, work };
    rested = false;
  }
  return changes;
}

const keyOf = ({ phase, item }: Pick<ClassLogRow, "phase" | "item">): string => `${phase} ${item ?? ""}`;
const tookAny = (row: ClassLogRow | undefined): boolean => row !== undefined && row.took + row.held > 0;
const doneOnce = ({ took, given }: ClassLogRow): boolean => took >= DONE && took <= given + EARLY;

/** Seconds from the end of the work before to when people worked; null where the log does not say. */
function trueSeconds(change: ClassLogRow | undefined, before: ClassLogRow, work: ClassLogRow): number | null {
  if (!change || !tookAny(change) || !doneOnce(before) || !doneOnce(work)) return null;
  const { given, took, held } = change;
  if (took > given + EARLY) return null;
  const late = work.held >= A_HOLD ? (work.lateStart ?? 0) : 0;
  const told = took < given - EARLY || held >= A_HOLD || late >= A_HOLD;
  return told ? took + held + late : null;
}

/** The floor writes one row a step, with the card's own seconds, and they add up. Anything else was written by somebody. */
function fitsCard({ plan, clock }: Pick<Card, "plan" | "clock">, log: ClassLog): boolean {
  const known = new Map(clock.rows.map((row) => [row.item, row]));
  const kinds = new Map(plan.items.map((item) => [item.id, item.kind]));
  const keys = new Set(log.rows.map(keyOf));
  const sum = log.rows.reduce((total, row) => total + row.took + row.held, 0);
  const sound = log.rows.every((row) => {
    const numbers = [row.planned, row.given, row.took, row.held, row.lateStart ?? 0];
    if (!numbers.every((x) => Number.isFinite(x) && x >= 0)) return false;
    if ((row.lateStart ?? 0) > row.held + 3 + ROUNDING) return false;
    if (row.item === null) return true;
    const at = known.get(row.item);
    if (!at) return false;
    if (row.phase === "change")
      return kinds.get(row.item) === "move" && near(row.planned, at.start - at.transitionFrom);
    return near(row.planned, at.end - at.start);
  });
  return (
    sound &&
    keys.size === log.rows.length &&
    Math.abs(sum - log.elapsed) <= log.rows.length * ROUNDING_OF_ROW + ROUNDING
  );
}

const near = (a: number, b: number): boolean => Math.abs(a - b) <= ROUNDING;
