/** What the month says: days, classes, their plans and what is still open in them. Pure; English on every device. */

import { isoWeekday } from "#lib/calendar/days.ts";
import { agree, plural } from "#lib/plan/format.ts";
import { planTitle } from "#lib/plan/plan-title.ts";
import type { Slot } from "#lib/programme/layout.ts";
import type { MonthProblem, MonthProblemKind } from "#lib/programme/problems.ts";
import type { PlanSummary } from "#lib/protocol/messages.ts";
import { STATE_WORDS } from "../_parts/state-words.ts";
import { lengthWords } from "../_parts/time-words.ts";

const MONTHS = "January February March April May June July August September October November December".split(" ");
const DAYS = "Monday Tuesday Wednesday Thursday Friday Saturday Sunday".split(" ");

/** "November 2026" */
export const monthTitle = (month: string): string => `${MONTHS[Number(month.slice(5)) - 1] ?? ""} ${month.slice(0, 4)}`;
export const dayName = (date: string): string => DAYS[isoWeekday(date) - 1] ?? "";
export const dayOfMonth = (date: string): number => Number(date.slice(8));
/** "Tuesday 3 November" */
export const dayWords = (date: string): string =>
  `${dayName(date)} ${dayOfMonth(date)} ${MONTHS[Number(date.slice(5, 7)) - 1] ?? ""}`;

/** Labels of a class's fields, and what a field says while it is empty. */
export const SLOT_WORDS = {
  theme: "Theme",
  noTheme: "no theme yet",
  note: "Note",
  day: "Day",
  time: "Begins",
  minutes: "Minutes",
  coach: "Coach",
  noCoach: "no coach yet",
  room: "Room",
  noRoom: "no room yet",
  plan: "Plan",
  noPlan: "no plan yet",
} as const;

/** For a person, room or plan whose name this person is not shown. */
export const NOT_SHOWN = "one you cannot see";

/** "Pull and press on Tuesday 3 November" */
export const slotName = (slot: Slot): string => `${slot.theme || `the ${slot.time} class`} on ${dayWords(slot.date)}`;
/** "Tuesday 3 November, 18:00, Pull and press" */
export const slotLine = (slot: Slot): string =>
  `${dayWords(slot.date)}, ${slot.time}, ${slot.theme || SLOT_WORDS.noTheme}`;

/** A plan in the list of those that a class can be given. */
export const planOption = (plan: PlanSummary): string =>
  `${planTitle(plan.title)} (${lengthWords(plan.lengthSeconds)}, ${STATE_WORDS[plan.state]})`;

/** Where the plan of a class stands. */
export function slotPlanWords(plan: PlanSummary): string {
  if (plan.withdrawn) return `edition ${plan.edition} withdrawn`;
  if (plan.state === "signed-off") return `edition ${plan.edition}`;
  return plan.edition > 0 ? `edition ${plan.edition}, ${STATE_WORDS[plan.state]} again` : STATE_WORDS[plan.state];
}

/** What is still open in a class, on its place in the month; its dialog has the whole sentence. */
const OPEN_WORDS: Record<MonthProblemKind, string> = {
  "no-plan": "no plan",
  "plan-not-found": "plan deleted",
  "plan-hidden": "a plan you may not read",
  "plan-unsigned": "not signed off",
  "plan-changed": "changed since signing",
  "plan-withdrawn": "edition withdrawn",
  "plan-too-long": "plan too long",
  "coach-clash": "coach booked twice",
  "room-clash": "room booked twice",
};
export const openWords = (problems: readonly MonthProblem[]): string =>
  [...new Set(problems.map((problem) => OPEN_WORDS[problem.kind]))].join(", ");

/** "9 classes; still to do: 2 without a plan, 1 clash" */
export function openSums(classes: number, problems: ReadonlyMap<string, readonly MonthProblem[]>): string {
  const count = (...kinds: MonthProblemKind[]) =>
    [...problems.values()]
      .flatMap((own) => [...new Set(own.map(({ kind }) => kind))])
      .filter((kind) => kinds.includes(kind)).length;
  const missing = count("no-plan", "plan-not-found");
  const unsigned = count("plan-unsigned", "plan-changed");
  // Each clash is a problem of both its classes.
  const clashes = count("coach-clash", "room-clash") / 2;
  const long = count("plan-too-long");
  const open = [
    missing > 0 && `${missing} without a plan`,
    unsigned > 0 && `${unsigned} not signed off`,
    clashes > 0 && plural(clashes, "clash", "clashes"),
    long > 0 && `${long} with a plan that is too long`,
  ].filter((part) => part !== false);
  const all = plural(classes, "class", "classes");
  return open.length > 0 ? `${all}; still to do: ${open.join(", ")}` : all;
}

/** "Show the 2 weeks that are over" */
export const showPastWords = (weeks: number): string =>
  `Show the ${agree(weeks, "week that is", `${weeks} weeks that are`)} over`;

/** A class that somebody took out while its dialog was open. */
export const slotGoneWords = (who: string, hasWords: boolean): string =>
  `${who} took this class out of the month. ${hasWords ? "Its words, yours included, are" : "It is"} kept in the list under the month.`;
