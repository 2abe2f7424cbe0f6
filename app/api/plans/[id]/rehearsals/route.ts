/** The rehearsals of a plan on the room's devices. */
import { readRehearsals } from "#server/class-log/read-rehearsals.ts";
import { guarded } from "#server/http/respond.ts";

export const GET = guarded({}, ({ app, actor, params }) => readRehearsals(app, actor, params.id ?? ""));
