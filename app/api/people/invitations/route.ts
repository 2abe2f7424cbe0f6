import { guarded, needs } from "#server/http/respond.ts";
import { invite, inviteSchema, listInvitations } from "#server/people/invite.ts";

export const GET = guarded({}, ({ app, actor }) => listInvitations(app, actor));
export const POST = guarded(
  { body: inviteSchema, first: needs("people.manage"), status: 201 },
  ({ app, actor, body }) => invite(app, actor, body),
);
