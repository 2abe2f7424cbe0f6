"use client";
/** A plan's session in React. */
import { useSyncExternalStore } from "react";
import { useHeldSession, useSessionSnapshot } from "#app/_parts/use-doc-session.ts";
import { browserEdge } from "#lib/client/doc-session/browser-edge.ts";
import { PlanSession } from "./session.ts";
import type { PlanPageProps, SessionSnapshot } from "./session-types.ts";

/** The session of this page; null until the page is in the browser. */
export const usePlanSession = (props: PlanPageProps): PlanSession | null =>
  useHeldSession(["plan", props.planId, props.generation, props.me.id], () => new PlanSession(props, browserEdge()));

export const useSnapshot = (session: PlanSession): SessionSnapshot => useSessionSnapshot(session);

const NEVER = () => () => undefined;

/** Null until there is a session. */
export const useSnapshotOnce = (session: PlanSession | null): SessionSnapshot | null =>
  useSyncExternalStore(
    session?.subscribe ?? NEVER,
    () => session?.getSnapshot() ?? null,
    () => null,
  );
