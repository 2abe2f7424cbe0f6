/** The studio's stock remarks. `?all=1`: those out of use too, for who writes them. */
import { guarded, needs } from "#server/http/respond.ts";
import { addRemark, listRemarks, newRemarkSchema } from "#server/remarks/remarks.ts";

export const GET = guarded({}, ({ app, actor, request }) =>
  listRemarks(app, actor, new URL(request.url).searchParams.has("all")),
);
export const POST = guarded(
  { body: newRemarkSchema, first: needs("remarks.write"), status: 201 },
  ({ app, actor, body }) => addRemark(app, actor, body),
);
