/** Where a thread is pinned: the plan, an item, or words of a script. Checked before it is stored. */
import * as Y from "yjs";
import * as z from "zod";
import { readItemById, scriptOf } from "#lib/doc/read.ts";
import { ID_PATTERN } from "#lib/plan/schema.ts";
import type { Anchor } from "#lib/protocol/messages.ts";
import { ok, type Result } from "#server/base/result.ts";
import { THREAD_ITEM_UNKNOWN, THREAD_ITEM_WITHOUT_WORDS } from "./refusals.ts";

/** Characters; a relative position takes about twenty bytes. */
const POSITION_MAX = 400;
const QUOTE_MAX = 500;

const itemId = z.string().regex(ID_PATTERN);
const position = z
  .string()
  .max(POSITION_MAX)
  .refine(isRelativePosition, "The place could not be read. Mark the words again.");

export const anchorSchema = z.discriminatedUnion("kind", [
  z.strictObject({ kind: z.literal("plan") }),
  z.strictObject({ kind: z.literal("item"), itemId }),
  z.strictObject({
    kind: z.literal("words"),
    itemId,
    from: position,
    to: position,
    quote: z
      .string()
      .max(QUOTE_MAX, `Mark at most ${QUOTE_MAX} characters.`)
      .refine((quote) => quote.trim() !== "", "Mark the words that the comment is about."),
  }),
]);

/** Errors: 422 no-such-item when the item is not in the stored document or has no words to pin to. */
export function checkAnchor(doc: Y.Doc, anchor: Anchor): Result<Anchor> {
  if (anchor.kind === "plan") return ok(anchor);
  if (!readItemById(doc, anchor.itemId)) return THREAD_ITEM_UNKNOWN;
  return anchor.kind === "words" && !scriptOf(doc, anchor.itemId) ? THREAD_ITEM_WITHOUT_WORDS : ok(anchor);
}

/** Base64 of an encoded Yjs relative position, nothing more and nothing less. */
function isRelativePosition(text: string): boolean {
  if (!/^[A-Za-z0-9+/]+={0,2}$/.test(text)) return false;
  try {
    const bytes = new Uint8Array(Buffer.from(text, "base64"));
    const again = Y.encodeRelativePosition(Y.decodeRelativePosition(bytes));
    return Buffer.compare(Buffer.from(again), Buffer.from(bytes)) === 0;
  } catch {
    return false;
  }
}
