import { unguarded } from "#server/http/respond.ts";
import { forgottenPassword, forgottenSchema } from "#server/people/mailed-links.ts";

export const POST = unguarded({ body: forgottenSchema, status: 202 }, ({ app, body, request }) =>
  forgottenPassword(app, body, request.headers),
);
