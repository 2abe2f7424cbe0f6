/** Changes a stock remark, takes it out of use or brings it back. */
import { guarded, needs } from "#server/http/respond.ts";
import { changeRemark, changeRemarkSchema } from "#server/remarks/remarks.ts";

export const PATCH = guarded(
  { body: changeRemarkSchema, first: needs("remarks.write") },
  ({ app, actor, params, body }) => changeRemark(app, actor, params.id ?? "", body),
);
