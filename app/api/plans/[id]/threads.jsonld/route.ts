/** The plan's threads as a file: Web Annotations in JSON-LD. */
import { ANNOTATION_TYPE } from "#lib/annotation/annotation.ts";
import { fileStem } from "#server/editions/editions.ts";
import { fileResponse } from "#server/editions/file-response.ts";
import { guarded } from "#server/http/respond.ts";
import { saveThreads, threadsFileText } from "#server/threads/save-threads.ts";

export const GET = guarded({ costly: true }, ({ app, actor, params }) => {
  const saved = saveThreads(app, actor, params.id ?? "");
  if (!saved.ok) return saved;
  const fileName = `${fileStem(saved.value.title)}.threads.jsonld`;
  return fileResponse({ text: threadsFileText(saved.value.data), type: ANNOTATION_TYPE, fileName });
});
