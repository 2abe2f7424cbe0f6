/** Deleting an account for good: what it would mean, and doing it. */
import { guarded, needs } from "#server/http/respond.ts";
import { deletePerson, deletionSchema, readDeletion } from "#server/people/delete-person.ts";

export const GET = guarded({ first: needs("people.manage") }, ({ app, actor, params }) =>
  readDeletion(app, actor, params.userId ?? ""),
);
export const POST = guarded({ body: deletionSchema, first: needs("people.manage") }, ({ app, actor, params, body }) =>
  deletePerson(app, actor, params.userId ?? "", body),
);
