/**
 * What class logs tell about how long changes really take. The floor runs by its clock, so a change that took its planned
 * time tells nothing: people may have been ready at any moment. Only a touch by the coach shows when they were.
 */
import type { Card } from "#lib/card/schema.ts";
import type { ClassLog, ClassLogRow } from "#lib/floor/class-log-schema.ts";
import { isMoveItem } from "#lib/plan/lookup.ts";
import type { MoveItem } from "#lib/plan/schema.ts";
import { slowestFactor } from "#lib/transitions/slowest.ts";
import { changeBetween, setupOf } from "#lib/transitions/transitions.ts";
import type { TimedChange } from "./studio-seconds.ts";

/** Shorter holds are slips of the finger. Seconds. */
const A_HOLD = 2;
/** The clock is in tenths and a touch is not exact, so a smaller difference is none. Seconds. */
const EARLY = 0.5;
/** Work that got less was skipped, so its set-up may not have happened. Seconds. */
const DONE = 5;
/** Tolerance for sums of tenths. Seconds. */
const ROUNDING = 0.2;
/** Tolerance per row when the rows of a log are added up. Seconds. */
const ROUNDING_OF_ROW = 0.1;

/**
 * The changes of one class whose true length its log shows: those ended early by *next* (people were ready), those held,
 * and those after which the work was held right at its start (people were not ready). A change shows nothing when it ran by
 * the clock, was gone through twice, followed a pause in which people may already have set up, or when the work before or
 * after it was skipped. Its actions count from the set-up that was really done before. Rehearsals are ignored, as they have
 * no people to wait for, and so are logs that do not fit their card. A class waits for its slowest, so its seconds are
 * divided by the factor of its people: what is left is one person's.
 */
export function classChanges(card: Pick<Card, "plan" | "clock">, log: ClassLog): TimedChange[] {
  if (log.kind !== "class" || !fitsCard(card, log)) return [];
  const rows = new Map(log.rows.map((row) => [keyOf(row), row]));
  const changes: TimedChange[] = [];
  const factor = slowestFactor(card.plan);
  let before: { readonly item: MoveItem; readonly work: ClassLogRow } | null = null;
  let rested = false;
  for (const item of card.plan.items) {
    if (item.kind === "pause") rested ||= tookAny(rows.get(`pause ${item.id}`));
    if (!isMoveItem(item)) continue;
    const work = rows.get(`work ${item.id}`);
    if (!work || !tookAny(work)) continue; // left out: the next change begins from the move before
    const seconds = rested || !before ? null : trueSeconds(rows.get(`change ${item.id}`), before.work, work);
    const change = before ? changeBetween(card.plan, setupOf(card.plan, before.item), setupOf(card.plan, item)) : null;
    if (seconds !== null && change && change.estimate > 0)
      changes.push({ actions: change.actions, seconds: seconds / factor });
    before = { item, work };
    rested = false;
  }
  return changes;
}

const keyOf = ({ phase, item }: Pick<ClassLogRow, "phase" | "item">): string => `${phase} ${item ?? ""}`;
const tookAny = (row: ClassLogRow | undefined): boolean => row !== undefined && row.took + row.held > 0;
const doneOnce = ({ took, given }: ClassLogRow): boolean => took >= DONE && took <= given + EARLY;

/** Seconds from the end of the work before until people worked again; null when the log does not show it. */
function trueSeconds(change: ClassLogRow | undefined, before: ClassLogRow, work: ClassLogRow): number | null {
  if (!change || !tookAny(change) || !doneOnce(before) || !doneOnce(work)) return null;
  const { given, took, held } = change;
  if (took > given + EARLY) return null;
  const late = work.held >= A_HOLD ? (work.lateStart ?? 0) : 0;
  const told = took < given - EARLY || held >= A_HOLD || late >= A_HOLD;
  return told ? took + held + late : null;
}

/** The floor writes one row per step with the card's own seconds, and they add up. Any other log is not from a floor. */
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
