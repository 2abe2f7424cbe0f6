/** What is said, as a WebVTT track. */

import { editionFile } from "#server/editions/editions.ts";
import { fileResponse } from "#server/editions/file-response.ts";
import { guarded } from "#server/http/respond.ts";

export const GET = guarded({}, ({ app, actor, params }) => {
  const which = { planId: params.planId ?? "", number: Number(params.number), form: "cues.vtt" as const };
  const file = editionFile(app, actor, which);
  return file.ok ? fileResponse(file.value) : file;
});
