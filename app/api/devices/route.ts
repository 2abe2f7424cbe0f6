import { addDevice, listDevices, newDeviceSchema } from "#server/devices/manage-devices.ts";
import { guarded, needs } from "#server/http/respond.ts";

export const GET = guarded({}, ({ app, actor }) => listDevices(app, actor));
export const POST = guarded(
  { body: newDeviceSchema, first: needs("devices.manage"), status: 201 },
  ({ app, actor, body }) => addDevice(app, actor, body),
);
