/**
 * Which changes of an edition keep coming late, and with which fittings. The floor runs by its clock: a change that took its planned
 * time tells nothing, and only a hold or a late start shows that people were not ready.
 */
import type { ClassLog } from "#lib/floor/class-log-schema.ts";
import { moveName } from "#lib/plan/format.ts";
import { isMoveItem } from "#lib/plan/lookup.ts";
import type { Action, Plan } from "#lib/plan/schema.ts";
import { changesInto } from "#lib/transitions/transitions.ts";

const FITTINGS = ["springs", "straps", "handles", "stations"] as const;
type Fitting = (typeof FITTINGS)[number];

const ACTIONS_OF: Readonly<Record<Fitting, readonly Action[]>> = {
  springs: ["springOn", "springOff"],
  straps: ["strapOn", "strapOff"],
  handles: ["handleUp", "handleDown", "handlesCross"],
  stations: ["stationChange"],
};

/** Less is not worth talking about. Seconds and a share of the planned ones; our own choice, as for one class (lib/progress). */
const LATE_SECONDS = 5;
const LATE_SHARE = 0.1;
/** Once may be chance. Our own choice: twice at least, and in half of its classes. */
const LEAST_TIMES = 2;
const LEAST_SHARE = 0.5;

export interface LateChange {
  readonly item: string;
  readonly name: string;
  readonly fittings: readonly Fitting[];
  /** In how many classes it was late, of those that came to it. */
  readonly late: number;
  readonly of: number;
  /** Median seconds over the planned ones in the classes in which it was late. */
  readonly seconds: number;
}
export interface LateFitting {
  readonly fitting: Fitting;
  /** Changes with it, over all classes: late ones, and all. One with two fittings counts for both. */
  readonly late: number;
  readonly of: number;
  readonly seconds: number;
}

interface Seen {
  readonly item: string;
  readonly fittings: readonly Fitting[];
  /** Of each class that came to it. */
  readonly over: readonly Over[];
}
interface Over {
  readonly seconds: number;
  readonly late: boolean;
}

/** Those that keep coming late, in the order of the plan. */
export function lateChanges(plan: Plan, logs: readonly ClassLog[]): LateChange[] {
  const names = new Map(plan.items.filter(isMoveItem).map((item) => [item.id, moveName(plan, item)]));
  return seenChanges(plan, logs).flatMap(({ item, fittings, over }) => {
    const late = over.filter((one) => one.late);
    if (late.length < LEAST_TIMES || late.length < LEAST_SHARE * over.length) return [];
    const seconds = median(late.map((one) => one.seconds));
    return [{ item, name: names.get(item) ?? item, fittings, late: late.length, of: over.length, seconds }];
  });
}

/** Every fitting that a change of the plan has, in the order of `FITTINGS`. */
export function lateFittings(plan: Plan, logs: readonly ClassLog[]): LateFitting[] {
  const seen = seenChanges(plan, logs);
  return FITTINGS.flatMap((fitting) => {
    const over = seen.filter(({ fittings }) => fittings.includes(fitting)).flatMap((one) => one.over);
    const late = over.filter((one) => one.late);
    if (over.length === 0) return [];
    return [{ fitting, late: late.length, of: over.length, seconds: median(late.map((one) => one.seconds)) }];
  });
}

function seenChanges(plan: Plan, logs: readonly ClassLog[]): Seen[] {
  const changes = changesInto(plan);
  const rows = logs.map(({ rows: own }) => new Map(own.map((row) => [`${row.phase} ${row.item}`, row])));
  return plan.items.filter(isMoveItem).map(({ id }) => ({
    item: id,
    fittings: fittingsOf(changes.get(id)?.actions ?? {}),
    over: rows.flatMap((own) => overOf(own.get(`change ${id}`), own.get(`work ${id}`)) ?? []),
  }));
}

type Row = ClassLog["rows"][number];

function overOf(change: Row | undefined, work: Row | undefined): Over | undefined {
  if (!change || change.took + change.held === 0) return undefined;
  const seconds = change.took + change.held + (work?.lateStart ?? 0) - change.planned;
  return { seconds, late: seconds >= LATE_SECONDS && seconds >= LATE_SHARE * change.planned };
}

const fittingsOf = (actions: Readonly<Partial<Record<Action, number>>>): Fitting[] =>
  FITTINGS.filter((fitting) => ACTIONS_OF[fitting].some((action) => (actions[action] ?? 0) > 0));

/** 0 for none. */
function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  const middle = (sorted.length - 1) / 2;
  return ((sorted[Math.floor(middle)] ?? 0) + (sorted[Math.ceil(middle)] ?? 0)) / 2;
}
