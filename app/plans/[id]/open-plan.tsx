"use client";
/** Loads the plan page in the browser only: the shared document exists once, and there. */
import dynamic from "next/dynamic";
import type { PlanPageProps } from "#app/_plan/session-types.ts";
import styles from "./page.module.css";

const PlanPage = dynamic(() => import("#app/_plan/plan-page.tsx").then((module) => module.PlanPage), {
  ssr: false,
  loading: () => (
    <main className={styles.opening}>
      <p role="status">Opening the plan…</p>
    </main>
  ),
});

export function OpenPlan(props: PlanPageProps) {
  return <PlanPage {...props} />;
}
