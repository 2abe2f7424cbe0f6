"use client";
/** Another month, as the server has it. */
import { useEffect, useState } from "react";
import type { MonthFile } from "#lib/month/types.ts";
import { send } from "../_parts/send.ts";

/** `month` is 'YYYY-MM'; null: none is wanted. Null until it is there. */
export function useMonthFile(month: string | null): { file: MonthFile | null; problem: string } {
  const [file, setFile] = useState<MonthFile | null>(null);
  const [problem, setProblem] = useState("");
  useEffect(() => {
    if (month === null) return;
    const stop = new AbortController();
    void send<MonthFile>("GET", `/api/programme/${month}/file`, undefined, { signal: stop.signal }).then((sent) => {
      if (stop.signal.aborted) return;
      setProblem(sent.ok ? "" : sent.message);
      if (sent.ok) setFile(sent.value);
    });
    return () => stop.abort();
  }, [month]);
  return { file, problem };
}
