/** The proof of the studio's record: the latest, and a new one. */
import { guarded, needs } from "#server/http/respond.ts";
import { readProving, startProving } from "#server/record/proving.ts";

const first = needs("record.read");
export const GET = guarded({ first }, ({ app, actor }) => readProving(app, actor));
export const POST = guarded({ first }, ({ app, actor }) => startProving(app, actor));
