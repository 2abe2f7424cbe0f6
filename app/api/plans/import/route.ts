/** A plan from a file; `?room=` says where it is taught. The text is read as it came, so that a key given twice shows. */
import { readBodyText } from "#server/http/body.ts";
import { guarded } from "#server/http/respond.ts";
import { importPlan } from "#server/plans/import-plan.ts";

export const POST = guarded({ status: 201 }, async ({ app, actor, request }) => {
  const text = await readBodyText(request);
  const room = new URL(request.url).searchParams.get("room") ?? undefined;
  return text.ok ? importPlan(app, actor, text.value, room) : text;
});
