/** A month of the programme, to be read without a socket. */
import { guarded } from "#server/http/respond.ts";
import { readProgramme } from "#server/programme/read-programme.ts";

export const GET = guarded({ costly: true }, ({ app, actor, params }) => readProgramme(app, actor, params.month ?? ""));
