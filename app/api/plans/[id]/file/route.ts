/** The plan as a file. */

import { fileStem } from "#server/editions/editions.ts";
import { fileResponse } from "#server/editions/file-response.ts";
import { guarded } from "#server/http/respond.ts";
import { exportPlan, planFileText } from "#server/plans/export-plan.ts";

export const GET = guarded({}, ({ app, actor, params }) => {
  const plan = exportPlan(app, actor, params.id ?? "");
  if (!plan.ok) return plan;
  return fileResponse({
    text: planFileText(plan.value),
    type: "application/json",
    fileName: `${fileStem(plan.value.title)}.plan.json`,
  });
});
