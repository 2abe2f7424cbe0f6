import { guarded, needs } from "#server/http/respond.ts";
import { mailSettingsSchema, saveMailSettings } from "#server/mail/mail-settings.ts";

export const PUT = guarded({ body: mailSettingsSchema, first: needs("mail.manage") }, ({ app, actor, body }) =>
  saveMailSettings(app, actor, body),
);
