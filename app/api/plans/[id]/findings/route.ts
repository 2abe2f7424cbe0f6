/** What the server itself finds in the plan, for a page that found something else. */
import { guarded } from "#server/http/respond.ts";
import { readFindings } from "#server/plans/read-findings.ts";

export const GET = guarded({}, ({ app, actor, params }) => readFindings(app, actor, params.id ?? ""));
