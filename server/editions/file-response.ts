/** A file as an HTTP response: never cached, and never interpreted as another type. */
import type { EditionFile } from "./editions.ts";

export function fileResponse(file: EditionFile): Response {
  return new Response(file.text, {
    headers: {
      "content-type": file.type,
      "content-disposition": `attachment; filename="${file.fileName}"`,
      "cache-control": "no-store",
      "x-content-type-options": "nosniff",
    },
  });
}
