import { unguarded } from "#server/http/respond.ts";
import { openReset } from "#server/people/enter.ts";
import { readResetLink, resetSchema } from "#server/people/reset-password.ts";

export const GET = unguarded({}, ({ app, params }) => readResetLink(app, params.token ?? ""));
export const POST = unguarded(
  { body: resetSchema, first: ({ app, params }) => readResetLink(app, params.token ?? "") },
  ({ app, params, body, request }) => openReset(app, params.token ?? "", body.password, request.headers),
);
