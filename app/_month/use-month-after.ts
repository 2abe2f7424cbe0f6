"use client";
/** The classes of the month after, where a week reaches into it. */
import { useMemo } from "react";
import { addMonths } from "#lib/calendar/days.ts";
import { ClassReader } from "#lib/month/check/classes.ts";
import type { MonthFile, MonthSlot } from "#lib/month/types.ts";
import { useMonthFile } from "./use-month-file.ts";

export interface MonthAfter {
  readonly file: MonthFile;
  readonly slots: readonly MonthSlot[];
}

/** `month` is 'YYYY-MM'. Null until it is there, or when it is not `wanted`. */
export function useMonthAfter(month: string, wanted: boolean): { after: MonthAfter | null; problem: string } {
  const { file, problem } = useMonthFile(wanted ? addMonths(month, 1) : null);
  const after = useMemo(() => file && { file, slots: slotsOf(file) }, [file]);
  return { after, problem };
}

const slotsOf = (file: MonthFile): MonthSlot[] =>
  new ClassReader()
    .read(file)
    .classes.map(({ slot }) => slot)
    .filter(({ date }) => date >= file.dates.from);
