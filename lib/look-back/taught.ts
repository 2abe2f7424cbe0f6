/** One class as it was taught: how it ended, how late it began, how much longer it took, and what it trained. */
import { balance } from "#lib/balance/balance.ts";
import type { ClassLog } from "#lib/floor/class-log-schema.ts";
import { isMoveItem } from "#lib/plan/lookup.ts";
import type { Group, Plan, PlanItem } from "#lib/plan/schema.ts";

export type TaughtEnd = "whole" | "early" | "abandoned";

/** A class that was ended before this share of its plan was only begun. Our own choice. */
const ABANDONED_SHARE = 0.5;

/** Seconds, holds included. */
const took = ({ rows }: Pick<ClassLog, "rows">): number => rows.reduce((sum, row) => sum + row.took + row.held, 0);
const planned = ({ rows }: Pick<ClassLog, "rows">): number => rows.reduce((sum, row) => sum + row.planned, 0);

/** The rows of a class that ended early are those it came to, so its length is compared with the plan's own. */
export function taughtEnd(log: Pick<ClassLog, "rows" | "whole">, planSeconds: number): TaughtEnd {
  if (log.whole) return "whole";
  return took(log) < ABANDONED_SHARE * planSeconds ? "abandoned" : "early";
}

/** Seconds more than planned, of the rows that it came to; negative for a shorter class. */
export const secondsOver = (log: Pick<ClassLog, "rows">): number => took(log) - planned(log);

export type GroupSeconds = Readonly<Partial<Record<Group, number>>>;

/** Seconds x weight of each group of muscles, as planned. */
export function plannedGroups(plan: Plan): GroupSeconds {
  return Object.fromEntries(Object.entries(balance(plan).groups).map(([group, { seconds }]) => [group, seconds]));
}

/** The same for the seconds that the work really took; what was left out is none. */
export function taughtGroups(plan: Plan, log: Pick<ClassLog, "rows">): GroupSeconds {
  const worked = new Map<string | null, number>();
  for (const { phase, item, took: seconds } of log.rows)
    if (phase === "work") worked.set(item, (worked.get(item) ?? 0) + seconds);
  const items = plan.items.flatMap((item): PlanItem[] => {
    if (!isMoveItem(item)) return [item];
    const seconds = worked.get(item.id) ?? 0;
    return seconds > 0 ? [{ ...item, seconds }] : [];
  });
  return plannedGroups({ ...plan, items });
}

export function addGroups(a: GroupSeconds, b: GroupSeconds): GroupSeconds {
  const groups = [...new Set([...Object.keys(a), ...Object.keys(b)])] as Group[];
  return Object.fromEntries(groups.map((group) => [group, (a[group] ?? 0) + (b[group] ?? 0)]));
}
