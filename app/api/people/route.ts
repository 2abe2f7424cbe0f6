import { guarded } from "#server/http/respond.ts";
import { listNames, listPeople } from "#server/people/manage-people.ts";

/** `?names=1`: names and roles only, for everybody; else with addresses, for managers. */
export const GET = guarded({}, ({ app, actor, request }) =>
  new URL(request.url).searchParams.has("names") ? listNames(app, actor) : listPeople(app, actor),
);
