import { guarded, needs } from "#server/http/respond.ts";
import { nameStudio, studioNameSchema } from "#server/studio/name-studio.ts";

export const PUT = guarded({ body: studioNameSchema, first: needs("standards.manage") }, ({ app, actor, body }) =>
  nameStudio(app, actor, body),
);
