import { guarded, needs } from "#server/http/respond.ts";
import { listInvitations } from "#server/people/invite.ts";
import { inviteByMail, inviteByMailSchema } from "#server/people/mailed-links.ts";

export const GET = guarded({}, ({ app, actor }) => listInvitations(app, actor));
export const POST = guarded(
  { body: inviteByMailSchema, first: needs("people.manage"), status: 201 },
  ({ app, who, body }) => inviteByMail(app, who, body),
);
