import { CLIENT_ADDRESS_HEADER } from "#server/auth/auth.ts";
import { pairDevice, pairSchema } from "#server/devices/pair-device.ts";
import { unguarded } from "#server/http/respond.ts";

export const POST = unguarded({ body: pairSchema }, ({ app, request, body }) =>
  pairDevice(app, body.code, request.headers.get(CLIENT_ADDRESS_HEADER) ?? ""),
);
