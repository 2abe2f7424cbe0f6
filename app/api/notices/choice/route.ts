import { guarded } from "#server/http/respond.ts";
import { chooseNotices, noticeChoiceSchema } from "#server/notices/notice-choices.ts";

export const PUT = guarded({ body: noticeChoiceSchema }, ({ app, actor, body }) => chooseNotices(app, actor, body));
