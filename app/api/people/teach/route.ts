import { guarded, needs } from "#server/http/respond.ts";
import { teachToo, teachTooSchema } from "#server/people/teach-too.ts";

export const POST = guarded({ body: teachTooSchema, first: needs("people.manage") }, ({ app, actor }) =>
  teachToo(app, actor),
);
