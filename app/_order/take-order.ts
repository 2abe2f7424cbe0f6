/** Takes the order that a preview shows: as few items moved as possible, one undo step. */

import { asShown } from "#app/_session/previews.ts";
import type { PlanSession } from "#app/_session/session.ts";
import { readPlan } from "#lib/doc/read.ts";
import { reorderItems } from "#lib/doc/reorder.ts";
import { setItemField } from "#lib/doc/write.ts";
import { takenOrderWords } from "./order-words.ts";
import { type OrderChoice, orderPreview, type SolvedBlock, solveBlock, solvedFrom } from "./preview.ts";

interface Shown extends OrderChoice {
  /** The preview as text. */
  readonly shown: string;
  readonly solved: SolvedBlock;
  /** What `solved` was worked out from. */
  readonly from: string;
}

/**
 * False, and nothing is taken, when somebody changed the plan in the last moment so that another order or other numbers
 * would be shown now.
 */
export function takeOrder(session: PlanSession, { shown, solved, from, ...choice }: Shown): boolean {
  const plan = readPlan(session.doc, session.studio);
  const now = solvedFrom(plan, choice.heading) === from ? solved : solveBlock(plan, choice.heading);
  if (!now.order.ok) return false;
  const preview = orderPreview(plan, now.order, choice);
  if (asShown(preview) !== shown) return false;
  const taken = session.act((w) => {
    reorderItems(w, choice.heading, preview.order.items);
    if (choice.free) for (const item of preview.planned) setItemField(w, item.id, "transitionSeconds", undefined);
  });
  if (taken) session.say(takenOrderWords(preview));
  return taken;
}
