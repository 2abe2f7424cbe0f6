import { guarded, needs } from "#server/http/respond.ts";
import { sendTestMail } from "#server/mail/manage-mail.ts";

export const POST = guarded({ first: needs("mail.manage") }, ({ app, who }) => sendTestMail(app, who));
