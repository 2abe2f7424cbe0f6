/** A new plan that begins as this edition was. */
import { guarded, needs } from "#server/http/respond.ts";
import { planFromEdition } from "#server/plans/plan-from-edition.ts";

export const POST = guarded({ first: needs("plan.create"), status: 201 }, ({ app, actor, params }) =>
  planFromEdition(app, actor, { planId: params.planId ?? "", number: Number(params.number) }),
);
