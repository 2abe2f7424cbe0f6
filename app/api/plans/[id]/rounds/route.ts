/** The plan's rounds of reading. */
import { guarded } from "#server/http/respond.ts";
import { readRounds } from "#server/rounds/read-rounds.ts";

export const GET = guarded({ costly: true }, ({ app, actor, params }) => readRounds(app, actor, params.id ?? ""));
