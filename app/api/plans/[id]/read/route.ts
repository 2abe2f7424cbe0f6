/** Puts the plan in front of a lead and keeps what they saw. */
import { guarded } from "#server/http/respond.ts";
import { readForSignOff } from "#server/sign-off/read-for-sign-off.ts";

export const POST = guarded({}, ({ app, actor, params }) => readForSignOff(app, actor, params.id ?? ""));
