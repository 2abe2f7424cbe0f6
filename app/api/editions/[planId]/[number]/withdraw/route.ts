/** Takes the edition out of use, with a reason. */
import { guarded } from "#server/http/respond.ts";
import { withdrawEdition, withdrawSchema } from "#server/sign-off/withdraw-edition.ts";

export const POST = guarded({ body: withdrawSchema }, ({ app, actor, params, body }) =>
  withdrawEdition(app, actor, { planId: params.planId ?? "", number: Number(params.number) }, body.reason),
);
