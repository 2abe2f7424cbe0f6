import { classLogSchema } from "#lib/floor/class-log-schema.ts";
import { takeLog } from "#server/class-log/take-log.ts";
import { guardedDevice } from "#server/http/respond.ts";

export const POST = guardedDevice({ body: classLogSchema, large: true }, ({ app, device, body }) =>
  takeLog(app, device, body),
);
