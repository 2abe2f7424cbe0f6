/** The classes of a week that have a known plan. */
import type { MonthWeek } from "../instants.ts";
import type { MonthClass } from "../sums-types.ts";

export const plannedIn = (classes: readonly MonthClass[], week: MonthWeek | undefined): MonthClass[] =>
  classes.filter(({ plan, date }) => plan && week && date >= week.from && date <= week.to);
