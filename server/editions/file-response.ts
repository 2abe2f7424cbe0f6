/** A file as an HTTP answer: never cached, never taken for anything but what it is. */
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
