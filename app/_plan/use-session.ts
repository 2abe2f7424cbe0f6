"use client";
/** React's door to a plan session. */
import { useEffect, useState, useSyncExternalStore } from "react";
import { acquireSession, releaseSession } from "./held-sessions.ts";
import type { PlanSession } from "./session.ts";
import type { PlanPageProps, SessionSnapshot } from "./session-types.ts";

/** The session of this page; null until the page is in the browser. */
export function usePlanSession(props: PlanPageProps): PlanSession | null {
  const [session, setSession] = useState<PlanSession | null>(null);
  // biome-ignore lint/correctness/useExhaustiveDependencies: a session belongs to one copy of one document, not to the props object
  useEffect(() => {
    const own = acquireSession(props);
    setSession(own);
    return () => releaseSession(own);
  }, [props.planId, props.generation, props.me.id]);
  return session;
}

export function useSnapshot(session: PlanSession): SessionSnapshot {
  return useSyncExternalStore(session.subscribe, session.getSnapshot, session.getSnapshot);
}
