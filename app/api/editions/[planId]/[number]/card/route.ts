/** The signed cue card. */
import { guarded } from "#server/http/respond.ts";
import { editionFile } from "#server/plans/editions.ts";
import { fileResponse } from "#server/plans/file-response.ts";

export const GET = guarded({}, ({ app, actor, params }) => {
  const which = { planId: params.planId ?? "", number: Number(params.number), form: "card" as const };
  const file = editionFile(app, actor, which);
  return file.ok ? fileResponse(file.value) : file;
});
