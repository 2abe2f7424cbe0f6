/** What is said of a month file that would take the place of the month. Pure. */
import { expandMonth } from "#lib/month/expand.ts";
import type { MonthFile } from "#lib/month/types.ts";
import { plural } from "#lib/plan/format.ts";

/** The classes of a month's own days that are not called off. */
const classesIn = (file: MonthFile): number =>
  expandMonth(file).filter(({ date, out }) => out !== true && date >= file.dates.from && date <= file.dates.to).length;

/** "12 classes in place of 39." */
export const replaceWords = (brought: MonthFile, there: MonthFile): string =>
  `${plural(classesIn(brought), "class", "classes")} in place of ${classesIn(there)}.`;
