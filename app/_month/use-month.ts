"use client";
/** React's door to a month session. */
import { useEffect, useState, useSyncExternalStore } from "react";
import { MonthSession } from "./month-session.ts";
import type { MonthPageProps, MonthSnapshot } from "./month-types.ts";

/** The session of this page; null until the page is in the browser. */
export function useMonthSession(props: MonthPageProps): MonthSession | null {
  const [session, setSession] = useState<MonthSession | null>(null);
  // biome-ignore lint/correctness/useExhaustiveDependencies: a session belongs to one copy of one month, not to the props object
  useEffect(() => {
    const own = new MonthSession(props);
    setSession(own);
    return () => own.end();
  }, [props.month, props.generation, props.me.id]);
  return session;
}

export const useMonth = (session: MonthSession): MonthSnapshot =>
  useSyncExternalStore(session.subscribe, session.getSnapshot, session.getSnapshot);
