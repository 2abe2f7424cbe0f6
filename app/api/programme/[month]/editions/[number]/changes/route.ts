/** What changed since an edition of a month: `?to=3` up to another, without it up to now. */
import { guarded } from "#server/http/respond.ts";
import { compareMonthEditions } from "#server/month-sign/month-editions.ts";

export const GET = guarded({ costly: true }, ({ app, actor, params, request }) => {
  const to = new URL(request.url).searchParams.get("to");
  const asked = { from: Number(params.number), to: to === null || to === "now" ? null : Number(to) };
  return compareMonthEditions(app, actor, params.month ?? "", asked);
});
