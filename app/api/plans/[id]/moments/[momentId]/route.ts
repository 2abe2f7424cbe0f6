/** What the plan was at one moment of its rounds, in an edition, or when the person who asks last read it. */
import { guarded } from "#server/http/respond.ts";
import { readPoint } from "#server/rounds/read-rounds.ts";

export const GET = guarded({}, ({ app, actor, params }) =>
  readPoint(app, actor, params.id ?? "", params.momentId ?? ""),
);
