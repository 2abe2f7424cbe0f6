import { guarded } from "#server/http/respond.ts";
import { makeResetLink } from "#server/people/reset-password.ts";

export const POST = guarded({ status: 201 }, ({ app, actor, params }) =>
  makeResetLink(app, actor, params.userId ?? ""),
);
