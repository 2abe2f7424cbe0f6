/** A file of a month to be saved; never cached, since it is as of now. */
export const monthFileResponse = (text: string, fileName: string, type: string): Response =>
  new Response(text, {
    headers: {
      "content-type": type,
      "content-disposition": `attachment; filename="${fileName.replace(/[^\w.-]/g, "")}"`,
      "cache-control": "no-store",
      "x-content-type-options": "nosniff",
    },
  });
