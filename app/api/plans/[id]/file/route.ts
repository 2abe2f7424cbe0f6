/** The plan as a file. */
import { guarded } from "#server/http/respond.ts";
import { fileStem } from "#server/plans/editions.ts";
import { exportPlan } from "#server/plans/export-plan.ts";
import { fileResponse } from "#server/plans/file-response.ts";

export const GET = guarded({}, ({ app, actor, params }) => {
  const plan = exportPlan(app, actor, params.id ?? "");
  if (!plan.ok) return plan;
  const text = `${JSON.stringify(plan.value, null, 2)}\n`;
  return fileResponse({ text, type: "application/json", fileName: `${fileStem(plan.value.title)}.plan.json` });
});
