import { guarded } from "#server/http/respond.ts";
import { revokeInvitation } from "#server/people/invite.ts";

export const DELETE = guarded({}, ({ app, actor, params }) => revokeInvitation(app, actor, params.invitationId ?? ""));
