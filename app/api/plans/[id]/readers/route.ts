/** Who may read the plan, by name. */
import { guarded } from "#server/http/respond.ts";
import { listPlanReaders } from "#server/threads/mentions.ts";

export const GET = guarded({}, ({ app, actor, params }) => listPlanReaders(app, actor, params.id ?? ""));
