/** What the moves of a plan file would bring to the library. The text is read as it came, so that a key given twice shows. */
import { readBodyText } from "#server/http/body.ts";
import { guarded } from "#server/http/respond.ts";
import { compareMoves } from "#server/library/compare-moves.ts";

export const POST = guarded({}, async ({ app, actor, request }) => {
  const text = await readBodyText(request);
  return text.ok ? compareMoves(app, actor, text.value) : text;
});
