import { guarded } from "#server/http/respond.ts";
import { changeHouse, houseSchema } from "#server/studio/change-house.ts";

export const PATCH = guarded({ body: houseSchema }, ({ app, actor, body }) => changeHouse(app, actor, body));
