/** A plan from a file; `?room=` says where it is taught. The text is read as it came, so that a key given twice shows. */
import { MAX_BODY_BYTES, readBodyText } from "#server/http/body.ts";
import { guarded, needs } from "#server/http/respond.ts";
import { importPlan } from "#server/plans/import-plan.ts";

export const POST = guarded({ status: 201, first: needs("plan.create") }, async ({ app, actor, request }) => {
  const text = await readBodyText(request, MAX_BODY_BYTES);
  const room = new URL(request.url).searchParams.get("room") ?? undefined;
  return text.ok ? importPlan(app, actor, text.value, room) : text;
});
