"use client";
/** The classes of the month after, where a week reaches into it. */
import { useEffect, useState } from "react";
import { addMonths } from "#lib/calendar/days.ts";
import { ClassReader } from "#lib/month/check/classes.ts";
import type { MonthFile, MonthSlot } from "#lib/month/types.ts";
import { send } from "../_parts/send.ts";

export interface MonthAfter {
  readonly file: MonthFile;
  readonly slots: readonly MonthSlot[];
}

/** `month` is 'YYYY-MM'. Null until it is there, or when it is not `wanted`. */
export function useMonthAfter(month: string, wanted: boolean): { after: MonthAfter | null; problem: string } {
  const [after, setAfter] = useState<MonthAfter | null>(null);
  const [problem, setProblem] = useState("");
  useEffect(() => {
    if (!wanted) return;
    const stop = new AbortController();
    void send<MonthFile>("GET", `/api/programme/${addMonths(month, 1)}/file`, undefined, { signal: stop.signal }).then(
      (sent) => {
        if (stop.signal.aborted) return;
        setProblem(sent.ok ? "" : sent.message);
        if (sent.ok) setAfter({ file: sent.value, slots: slotsOf(sent.value) });
      },
    );
    return () => stop.abort();
  }, [month, wanted]);
  return { after, problem };
}

const slotsOf = (file: MonthFile): MonthSlot[] =>
  new ClassReader()
    .read(file)
    .classes.map(({ slot }) => slot)
    .filter(({ date }) => date >= file.dates.from);
