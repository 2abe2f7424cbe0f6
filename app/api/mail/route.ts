import { guarded, needs } from "#server/http/respond.ts";
import { mailSettingsSchema, saveMailSettings, turnMailOff } from "#server/mail/mail-settings.ts";

export const PUT = guarded({ body: mailSettingsSchema, first: needs("mail.manage") }, ({ app, actor, body }) =>
  saveMailSettings(app, actor, body),
);
export const DELETE = guarded({ first: needs("mail.manage") }, ({ app, actor }) => turnMailOff(app, actor));
