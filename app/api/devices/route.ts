import { addDevice, listDevices, newDeviceSchema } from "#server/devices/manage-devices.ts";
import { guarded } from "#server/http/respond.ts";

export const GET = guarded({}, ({ app, actor }) => listDevices(app, actor));
export const POST = guarded({ body: newDeviceSchema, status: 201 }, ({ app, actor, body }) =>
  addDevice(app, actor, body),
);
