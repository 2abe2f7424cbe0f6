/** A finding about one class. */
import type { MonthClass } from "../sums-types.ts";
import type { MonthFound } from "./define-month-rule.ts";

export const oneClass = <V extends MonthFound["values"]>(one: MonthClass, values: V) => ({
  about: one.id,
  classes: [one],
  values,
});
