/**
 * What is wrong with a month: slots without a signed plan, two classes with the same coach or room at the same time, a plan
 * that is too long for its slot. Past days are not checked.
 */

import { dayNumber, minuteOfDay } from "#lib/calendar/days.ts";
import { planTitle } from "#lib/plan/plan-title.ts";
import type { PlanSummary, PlansKnown } from "#lib/protocol/messages.ts";
import type { Slot } from "./layout.ts";
import { bySlotTime } from "./read.ts";

type MonthProblemKind =
  | "no-plan"
  | "plan-not-found"
  | "plan-hidden"
  | "plan-unsigned"
  /** Changed since it was signed: the floor still gets the signed edition. */
  | "plan-changed"
  /** Its newest edition was withdrawn: the floor gets none. */
  | "plan-withdrawn"
  | "plan-too-long"
  | "coach-clash"
  | "room-clash";

export interface MonthProblem {
  readonly kind: MonthProblemKind;
  /** The slots it is about, in order of time: one, or the two that clash. */
  readonly slots: readonly string[];
  readonly message: string;
  /** Minutes of overlap, or minutes by which the plan is too long; else absent. */
  readonly minutes?: number;
}

/**
 * Problems of every slot from `today` ('YYYY-MM-DD') on, in order of time. A slot's plan that is neither known nor
 * hidden was deleted.
 */
export function monthProblems(slots: readonly Slot[], { plans, hidden }: PlansKnown, today: string): MonthProblem[] {
  const known = new Map<string, PlanSummary | "hidden">(hidden.map((id) => [id, "hidden"]));
  for (const plan of plans) known.set(plan.id, plan);
  const coming = slots.filter((slot) => slot.date >= today).sort(bySlotTime);
  return coming.flatMap((slot, i) => [
    ...planProblems(slot, slot.planId === null ? undefined : known.get(slot.planId)),
    ...coming.slice(i + 1).flatMap((other) => clashes(slot, other)),
  ]);
}

function planProblems(slot: Slot, plan: PlanSummary | "hidden" | undefined): MonthProblem[] {
  const say = (kind: MonthProblemKind, message: string, minutes?: number): MonthProblem => ({
    kind,
    slots: [slot.id],
    message,
    ...(minutes === undefined ? {} : { minutes }),
  });
  if (slot.planId === null) return [say("no-plan", "No plan yet. Choose one for this class.")];
  if (!plan) return [say("plan-not-found", "Its plan was deleted. Choose another one.")];
  if (plan === "hidden") return [say("plan-hidden", "You may not read this plan, so its state is not shown to you.")];
  const problems: MonthProblem[] = [];
  const title = planTitle(plan.title);
  if (plan.withdrawn) {
    const { edition, withdrawn } = plan;
    const words = `Edition ${edition} of "${title}" was withdrawn by ${withdrawn.byName}: ${withdrawn.reason}`;
    problems.push(say("plan-withdrawn", words));
  } else if (plan.state !== "signed-off") {
    problems.push(
      plan.edition === 0
        ? say("plan-unsigned", `"${title}" is not signed off, so the floor has nothing to run yet.`)
        : say("plan-changed", `"${title}" was changed after edition ${plan.edition}. The floor gets that edition.`),
    );
  }
  const over = plan.lengthSeconds / 60 - slot.minutes;
  if (over > 0) {
    const by = Math.ceil(over);
    problems.push(say("plan-too-long", `"${title}" is ${by} min longer than its slot of ${slot.minutes} min.`, by));
  }
  return problems;
}

function clashes(a: Slot, b: Slot): MonthProblem[] {
  const minutes = overlapMinutes(a, b);
  if (minutes <= 0) return [];
  const slots = [a.id, b.id];
  const at = `${b.date} ${b.time}`;
  const found: MonthProblem[] = [];
  if (a.coachId !== null && a.coachId === b.coachId) {
    found.push({
      kind: "coach-clash",
      slots,
      minutes,
      message: `The coach has two classes at once: ${minutes} min from ${at}.`,
    });
  }
  if (a.roomId !== null && a.roomId === b.roomId) {
    found.push({
      kind: "room-clash",
      slots,
      minutes,
      message: `The room has two classes at once: ${minutes} min from ${at}.`,
    });
  }
  return found;
}

/** Minutes that two slots share, also over midnight; 0 when one ends before or as the other begins. */
export function overlapMinutes(a: Slot, b: Slot): number {
  const from = (s: Slot) => dayNumber(s.date) * 1440 + minuteOfDay(s.time);
  return Math.max(0, Math.min(from(a) + a.minutes, from(b) + b.minutes) - Math.max(from(a), from(b)));
}
