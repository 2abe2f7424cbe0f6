/** Adds the items of a list to the class: one act, one undo step. */
import { newId } from "#app/_parts/new-id.ts";
import type { PlanSession } from "#app/_session/session.ts";
import { insertItems } from "#lib/doc/write.ts";
import { draftsToItems } from "#lib/paste/drafts.ts";
import type { ItemDraft } from "#lib/paste/judged.ts";
import { MAX_ITEMS } from "#lib/paste/limits.ts";
import { addedWords, CANNOT_ADD, tooManyItemsWords } from "./paste-words.ts";

/** Null when they were added, with the last of them selected; else one sentence that says why not. */
export function putIn(session: PlanSession, afterId: string | null, drafts: readonly ItemDraft[]): string | null {
  const before = session.getSnapshot().plan.items.length;
  if (before + drafts.length > MAX_ITEMS) return tooManyItemsWords(before);
  const items = draftsToItems(drafts, newId);
  if (!session.act((w) => insertItems(w, afterId, items))) return CANNOT_ADD;
  session.select(items.at(-1)?.id ?? null);
  session.say(addedWords(items.length));
  return null;
}
