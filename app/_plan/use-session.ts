"use client";
/** React's door to a plan session. */
import { useHeldSession, useSessionSnapshot } from "#app/_shell/use-doc-session.ts";
import { browserEdge } from "#lib/client/doc-session/browser-edge.ts";
import { PlanSession } from "./session.ts";
import type { PlanPageProps, SessionSnapshot } from "./session-types.ts";

/** The session of this page; null until the page is in the browser. */
export const usePlanSession = (props: PlanPageProps): PlanSession | null =>
  useHeldSession(["plan", props.planId, props.generation, props.me.id], () => new PlanSession(props, browserEdge()));

export const useSnapshot = (session: PlanSession): SessionSnapshot => useSessionSnapshot(session);
