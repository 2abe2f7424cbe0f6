"use client";
/** Loads the month in the browser only: the shared document exists once, and there. */
import dynamic from "next/dynamic";
import type { MonthPageProps } from "../../_month/month-types.ts";

const MonthView = dynamic(() => import("../../_month/month-view.tsx").then((module) => module.MonthView), {
  ssr: false,
  loading: () => <p role="status">Opening the month…</p>,
});

export function OpenMonth(props: MonthPageProps) {
  return <MonthView key={props.month} {...props} />;
}
