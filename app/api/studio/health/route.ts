import { readHealthReport } from "#server/health/health-report.ts";
import { guarded, needs } from "#server/http/respond.ts";

export const GET = guarded({ first: needs("health.read") }, ({ app, actor }) => readHealthReport(app, actor));
