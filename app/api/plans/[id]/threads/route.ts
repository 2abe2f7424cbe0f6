/** Threads on the plan. */
import { guarded } from "#server/http/respond.ts";
import { needsPlan } from "#server/plans/open-plan.ts";
import { listPlanThreads, newThreadSchema, openThread } from "#server/threads/threads.ts";

export const GET = guarded({}, ({ app, actor, params }) => listPlanThreads(app, actor, params.id ?? ""));
export const POST = guarded(
  { body: newThreadSchema, first: needsPlan("plan.comment"), status: 201 },
  ({ app, actor, params, body }) => openThread(app, actor, params.id ?? "", body),
);
