import { unguarded } from "#server/http/respond.ts";
import { openFirstRun } from "#server/people/enter.ts";
import { firstRunSchema } from "#server/people/first-run.ts";

export const POST = unguarded({ body: firstRunSchema }, ({ app, body, request }) =>
  openFirstRun(app, body, request.headers),
);
