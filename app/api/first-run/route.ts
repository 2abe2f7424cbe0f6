import { unguarded } from "#server/http/respond.ts";
import { openFirstRun } from "#server/people/enter.ts";
import { firstRunSchema, refuseFirstRun } from "#server/people/first-run.ts";

export const POST = unguarded({ body: firstRunSchema, first: refuseFirstRun }, ({ app, body, request }) =>
  openFirstRun(app, body, request.headers),
);
