import { pairDevice, pairSchema } from "#server/devices/pair-device.ts";
import { unguarded } from "#server/http/respond.ts";
import { CLIENT_NETWORK_HEADER } from "#server/limits/network.ts";

export const POST = unguarded({ body: pairSchema }, ({ app, request, body }) =>
  pairDevice(app, body.code, request.headers.get(CLIENT_NETWORK_HEADER)),
);
