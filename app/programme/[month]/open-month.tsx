"use client";
/** Loads the month in the browser only: the shared document exists once, and there. */
import dynamic from "next/dynamic";
import type { MonthViewProps } from "../../_month/month-view.tsx";

const MonthView = dynamic(() => import("../../_month/month-view.tsx").then((module) => module.MonthView), {
  ssr: false,
  loading: () => <p role="status">Opening the month…</p>,
});

export function OpenMonth(props: MonthViewProps) {
  return <MonthView key={props.month} {...props} />;
}
