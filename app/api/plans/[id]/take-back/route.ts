/** Takes a hand-in back. */
import { guarded } from "#server/http/respond.ts";
import { takeBack } from "#server/sign-off/hand-in.ts";

export const POST = guarded({}, ({ app, actor, params }) => takeBack(app, actor, params.id ?? ""));
