"use client";
/** A month's session in React. */
import { useHeldSession, useSessionSnapshot } from "#app/_parts/use-doc-session.ts";
import { dateOfDay } from "#lib/calendar/days.ts";
import { wallTimeAt } from "#lib/calendar/zone.ts";
import { browserEdge } from "#lib/client/doc-session/browser-edge.ts";
import { type MonthSession, openMonth } from "./month-session.ts";
import type { MonthPageProps, MonthSnapshot } from "./month-types.ts";

/** The session of this page; null until the page is in the browser. */
export const useMonthSession = (props: MonthPageProps): MonthSession | null =>
  useHeldSession(["month", props.month, props.generation, props.me.id], () => openMonth(props, browserEdge(), todayIn));

export const useMonth = (session: MonthSession): MonthSnapshot => useSessionSnapshot(session);

const DAY_MS = 86_400_000;
const todayIn = (zone: string): string => dateOfDay(Math.floor(wallTimeAt(Date.now(), zone) / DAY_MS));
