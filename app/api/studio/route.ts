import { guarded, needs } from "#server/http/respond.ts";
import { changePolicy, policySchema } from "#server/studio/change-policy.ts";

export const PATCH = guarded({ body: policySchema, first: needs("standards.manage") }, ({ app, actor, body }) =>
  changePolicy(app, actor, body),
);
