"use client";
/** A month's session in React. */
import { useHeldSession, useSessionSnapshot } from "#app/_parts/use-doc-session.ts";
import { browserEdge } from "#lib/client/doc-session/browser-edge.ts";
import { type MonthSession, openMonth } from "./month-session.ts";
import type { MonthPageProps, MonthSnapshot } from "./month-types.ts";

/** The session of this page; null until the page is in the browser. */
export const useMonthSession = (props: MonthPageProps): MonthSession | null =>
  useHeldSession(["month", props.month, props.generation, props.me.id], () => openMonth(props, browserEdge(), today));

export const useMonth = (session: MonthSession): MonthSnapshot => useSessionSnapshot(session);

function today(): string {
  const now = new Date();
  const two = (n: number) => String(n).padStart(2, "0");
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}
