/** How dates and units are written for oneself. */
import { changeOwnFormats, ownFormatsSchema, showOwnFormats } from "#server/formats/own-formats.ts";
import { guarded } from "#server/http/respond.ts";

export const GET = guarded({}, ({ app, actor }) => showOwnFormats(app, actor));
export const PUT = guarded({ body: ownFormatsSchema }, ({ app, actor, body }) => changeOwnFormats(app, actor, body));
