import { takeBackDevice } from "#server/devices/manage-devices.ts";
import { guarded } from "#server/http/respond.ts";

export const DELETE = guarded({}, ({ app, actor, params }) => takeBackDevice(app, actor, params.id ?? ""));
