/** The whole studio as one zip file. A page of another site cannot ask for it: it takes seconds, and is on record. */
import { fail } from "#server/base/result.ts";
import { guarded, needs } from "#server/http/respond.ts";
import { downloadStudio } from "#server/studio-files/download-studio.ts";

const FROM_ELSEWHERE = fail(403, "from-elsewhere", "Open the studio's own page and export it there.");
const ONLY_WHOLE = fail(405, "only-whole", "An export is made anew each time. Ask for the whole of it.");

export const GET = guarded({ costly: true, first: needs("studio.export") }, async ({ app, actor, request }) => {
  if (request.headers.get("sec-fetch-site") === "cross-site") return FROM_ELSEWHERE;
  // Answered by this function too, and its content would never be read.
  if (request.method === "HEAD") return ONLY_WHOLE;
  const made = await downloadStudio(app, actor, request.signal);
  if (!made.ok) return made;
  const { fileName, bytes, content } = made.value;
  return new Response(content, {
    headers: {
      "content-type": "application/zip",
      "content-length": String(bytes),
      "content-disposition": `attachment; filename="${fileName}"`,
      "cache-control": "no-store",
      "x-content-type-options": "nosniff",
    },
  });
});
