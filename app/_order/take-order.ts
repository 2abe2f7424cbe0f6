/** Taking the order that a preview shows: as few items moved as can be, one undo step. */

import type { PlanSession } from "#app/_session/session.ts";
import { shownIn } from "#app/_session/shown-in.ts";
import { changeWords } from "#lib/clock/length-words.ts";
import { readPlan } from "#lib/doc/read.ts";
import { reorderItems } from "#lib/doc/reorder.ts";
import { setItemField } from "#lib/doc/write.ts";
import { plural, secondsWords } from "#lib/plan/format.ts";
import { type Choice, orderPreview, type Solved, solveBlock, solvedFrom } from "./preview.ts";

interface Shown extends Choice {
  readonly shown: string;
  readonly solved: Solved;
  /** What `solved` was worked out from. */
  readonly from: string;
}

/**
 * False, and nothing is taken, when the plan has changed in the last moment so that another order or other numbers would
 * be shown now.
 */
export function takeOrder(session: PlanSession, { shown, solved, from, ...choice }: Shown): boolean {
  const plan = readPlan(session.doc, session.studio);
  const now = solvedFrom(plan, choice.heading) === from ? solved : solveBlock(plan, choice.heading);
  if (!now.order.ok) return false;
  const preview = orderPreview(plan, now.order, choice);
  if (shownIn(preview) !== shown) return false;
  const { order, moved, planned, clock } = preview;
  const taken = session.act((w) => {
    reorderItems(w, choice.heading, order.items);
    if (choice.free) for (const item of planned) setItemField(w, item.id, "transitionSeconds", undefined);
  });
  if (taken) {
    const saved = `${changeWords(clock.before, clock.after)} on the clock`;
    session.say(
      `${plural(moved.length, "item")} moved: ${secondsWords(order.before - order.after)} less to change, ${saved}.`,
    );
  }
  return taken;
}
