import { guarded, needs } from "#server/http/respond.ts";
import { changeHouse, houseSchema } from "#server/studio/change-house.ts";

export const PATCH = guarded({ body: houseSchema, first: needs("standards.manage") }, ({ app, actor, body }) =>
  changeHouse(app, actor, body),
);
