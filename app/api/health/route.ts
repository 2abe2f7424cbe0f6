import { readHealth } from "#server/health/health.ts";
import { unguarded } from "#server/http/respond.ts";

export const dynamic = "force-dynamic";
export const GET = unguarded({}, ({ app }) => readHealth(app));
