import { readAddress } from "#server/http/address.ts";
import { unguarded } from "#server/http/respond.ts";

export const dynamic = "force-dynamic";
export const GET = unguarded({}, ({ app, request }) => readAddress(app, request));
