/** Where a thread is pinned: the plan, an item, the change before it, words of a script, or a finding. Checked before it is stored. */
import * as Y from "yjs";
import * as z from "zod";
import { readItemById, scriptOf } from "#lib/doc/read.ts";
import { isPinOf } from "#lib/margin/pin.ts";
import { ID_PATTERN } from "#lib/plan/schema.ts";
import type { Anchor } from "#lib/protocol/messages.ts";
import { isKeyOfFinding } from "#lib/rules/finding-key.ts";
import { ok, type Result } from "#server/base/result.ts";
import {
  THREAD_FINDING_UNKNOWN,
  THREAD_ITEM_UNKNOWN,
  THREAD_ITEM_WITHOUT_CHANGE,
  THREAD_ITEM_WITHOUT_WORDS,
  THREAD_WORDS_GONE,
} from "./refusals.ts";

/** Characters; a relative position takes about twenty bytes. */
const POSITION_MAX = 400;
const QUOTE_MAX = 500;

const MOST_OTHERS = 20;
const KEY_MAX = 400;
const MOST_ITEMS = 500;

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
    others: z.array(position).max(MOST_OTHERS).readonly().optional(),
  }),
  z.strictObject({ kind: z.literal("change"), itemId }),
  z
    .strictObject({
      kind: z.literal("finding"),
      rule: z.string().regex(ID_PATTERN),
      itemIds: z.array(itemId).max(MOST_ITEMS).readonly(),
      key: z.string().max(KEY_MAX),
    })
    .refine(({ rule, key }) => key.startsWith(`${rule}:`), "The key does not belong to the rule."),
]);

/**
 * A page may be a moment behind the stored document, so words count that stand elsewhere in the script by now; a finding
 * may have gone meanwhile, so only its key is looked at. Errors: 422 no-such-item when an item is not in the stored
 * document, no-words when it has none to pin to, no-change when nobody changes set-up before it, no-such-finding; 409
 * words-gone when the quote does not stand in the script that the places are in.
 */
export function checkAnchor(doc: Y.Doc, anchor: Anchor): Result<Anchor> {
  if (anchor.kind === "plan") return ok(anchor);
  if (anchor.kind === "finding") {
    if (!anchor.itemIds.every((id) => readItemById(doc, id))) return THREAD_ITEM_UNKNOWN;
    return isKeyOfFinding(anchor) ? ok(anchor) : THREAD_FINDING_UNKNOWN;
  }
  const item = readItemById(doc, anchor.itemId);
  if (!item) return THREAD_ITEM_UNKNOWN;
  if (anchor.kind === "change" && item.kind !== "move") return THREAD_ITEM_WITHOUT_CHANGE;
  if (anchor.kind !== "words") return ok(anchor);
  const script = scriptOf(doc, anchor.itemId);
  if (!script) return THREAD_ITEM_WITHOUT_WORDS;
  return isPinOf(script, anchor) ? ok(anchor) : THREAD_WORDS_GONE;
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
