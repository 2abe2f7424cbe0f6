/** The month's limits as they hold for one group. */
import { limitsOfMonth, type MonthFile } from "#lib/month/types.ts";
import type { Group } from "#lib/plan/schema.ts";

export function recoveryHoursOf(month: Pick<MonthFile, "limits">, group: Group): number {
  const { recoveryBy, recoveryHours } = limitsOfMonth(month);
  return recoveryBy[group] ?? recoveryHours;
}
