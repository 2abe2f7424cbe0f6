/** What months say of the studio: zone, machines, limits. */
import { guarded, needs } from "#server/http/respond.ts";
import { readMonthSettings } from "#server/month-facts/month-settings.ts";
import { changeMonthSettings, monthSettingsChangeSchema } from "#server/programme/change-month-settings.ts";

export const GET = guarded({}, ({ app, actor }) => readMonthSettings(app, actor));
export const PUT = guarded({ body: monthSettingsChangeSchema, first: needs("month.manage") }, ({ app, actor, body }) =>
  changeMonthSettings(app, actor, body),
);
