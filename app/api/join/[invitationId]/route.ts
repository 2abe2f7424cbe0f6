import { unguarded } from "#server/http/respond.ts";
import { openJoin } from "#server/people/enter.ts";
import { joinSchema, readJoin } from "#server/people/join.ts";

export const GET = unguarded({}, ({ app, params }) => readJoin(app, params.invitationId ?? ""));
export const POST = unguarded(
  { body: joinSchema, first: ({ app, params }) => readJoin(app, params.invitationId ?? "") },
  ({ app, params, body, request }) => openJoin(app, params.invitationId ?? "", body, request.headers),
);
