/** Puts the items of a list into the class: one act, one undo step. */
import { newId } from "#app/_plan/new-id.ts";
import type { PlanSession } from "#app/_plan/session.ts";
import { insertItems } from "#lib/doc/write.ts";
import { draftsToItems } from "#lib/paste/drafts.ts";
import type { ItemDraft } from "#lib/paste/judged.ts";
import { MAX_ITEMS } from "#lib/paste/limits.ts";
import { plural } from "#lib/plan/format.ts";

/** Null when they are in, the last of them chosen; else one sentence why not. */
export function putIn(session: PlanSession, afterId: string | null, drafts: readonly ItemDraft[]): string | null {
  const before = session.getSnapshot().plan.items.length;
  if (before + drafts.length > MAX_ITEMS) return `A class holds up to ${MAX_ITEMS} items; this one has ${before}.`;
  const items = draftsToItems(drafts, newId);
  if (!session.act((w) => insertItems(w, afterId, items))) return "This plan is not yours to write in just now.";
  session.select(items.at(-1)?.id ?? null);
  session.say(`${plural(items.length, "item")} of the list put in. One undo takes them all out again.`);
  return null;
}
