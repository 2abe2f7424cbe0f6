/** Answers which server this is and how the request reached it. It only reveals what the request itself contained. */

import { type AddressAnswer, addressAnswerSchema } from "#lib/protocol/address.ts";
import type { Springline } from "#server/context/springline.ts";
import { CLIENT_ADDRESS_HEADER } from "#server/limits/network.ts";
import { FORWARDED_HEADER } from "./gate.ts";
import { installationId } from "./installation-id.ts";

export function readAddress(app: Pick<Springline, "env">, request: Request): Response {
  const said = addressAnswerSchema.shape.forwarded.safeParse(request.headers.get(FORWARDED_HEADER));
  const answer: AddressAnswer = {
    program: "springline",
    server: installationId(app.env.secret),
    address: app.env.origin,
    forwarded: said.success ? said.data : "none",
    client: request.headers.get(CLIENT_ADDRESS_HEADER) ?? "",
  };
  return Response.json(answer, { headers: { "cache-control": "no-store" } });
}
