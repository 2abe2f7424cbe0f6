/** The studio's rubric. */
import { guarded, needs } from "#server/http/respond.ts";
import { changeRubric, readRubric, rubricChangeSchema } from "#server/marks/rubric.ts";

export const GET = guarded({}, ({ app, actor }) => readRubric(app, actor));
export const PUT = guarded({ body: rubricChangeSchema, first: needs("rubric.write") }, ({ app, actor, body }) =>
  changeRubric(app, actor, body),
);
