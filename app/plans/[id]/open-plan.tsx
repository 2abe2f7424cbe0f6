"use client";
/** Loads the plan page in the browser only: the shared document exists once, and there. */
import { Opening } from "#app/_plan/opening.tsx";
import type { PlanPageProps } from "#app/_plan/session-types.ts";
import { LatePart } from "#app/_shell/late-part.tsx";
import { late } from "#lib/client/late.ts";

const planPage = late(() => import("#app/_plan/plan-page.tsx").then((module) => module.PlanPage));

export const OpenPlan = (props: PlanPageProps) => (
  <LatePart part={planPage} props={props} meanwhile={<Opening title={props.title} />} />
);
