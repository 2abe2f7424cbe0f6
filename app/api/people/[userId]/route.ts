import { guarded, needs } from "#server/http/respond.ts";
import { changeRoles, removePerson, rolesSchema } from "#server/people/manage-people.ts";

export const PATCH = guarded({ body: rolesSchema, first: needs("people.manage") }, ({ app, actor, params, body }) =>
  changeRoles(app, actor, params.userId ?? "", body.roles),
);
export const DELETE = guarded({}, ({ app, actor, params }) => removePerson(app, actor, params.userId ?? ""));
