/** What the month's page says: fields of a class, plans and where they stand. Pure; the same on every device. */
import { dayAndTime, dayWords, timeWords } from "#lib/formats/dates.ts";
import type { Formats } from "#lib/formats/formats.ts";

import { planTitle } from "#lib/plan/plan-title.ts";
import type { Slot } from "#lib/programme/layout.ts";
import type { PlanSummary } from "#lib/protocol/messages.ts";
import { STATE_WORDS } from "../_parts/state-words.ts";
import { lengthWords } from "../_parts/time-words.ts";

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
  people: "People",
  regulars: "Regulars who come",
  locked: "Locked: a fill leaves its plan as it is",
} as const;

/** For a person, room or plan whose name this person is not shown. */
export const NOT_SHOWN = "one you cannot see";

/** "Pull and press on Tuesday 3 November" */
export const slotName = (slot: Slot, f: Formats): string =>
  `${slot.theme || `the ${timeWords(slot.time, f)} class`} on ${dayWords(slot.date, f)}`;
/** "Tuesday 3 November, 18:00, Pull and press" */
export const slotLine = (slot: Slot, f: Formats): string =>
  `${dayAndTime(slot.date, slot.time, f)}, ${slot.theme || SLOT_WORDS.noTheme}`;

/** A plan in the list of those that a class can be given. */
export const planOption = (plan: PlanSummary): string =>
  `${planTitle(plan.title)} (${lengthWords(plan.lengthSeconds)}, ${STATE_WORDS[plan.state]})`;

/** Where the plan of a class stands. */
export function slotPlanWords(plan: PlanSummary): string {
  if (plan.withdrawn) return `edition ${plan.edition} withdrawn`;
  if (plan.state === "signed-off") return `edition ${plan.edition}`;
  return plan.edition > 0 ? `edition ${plan.edition}, ${STATE_WORDS[plan.state]} again` : STATE_WORDS[plan.state];
}

/** What somebody took out while it was open here. */
export const slotGoneWords = (who: string, hasWords: boolean): string =>
  `${who} took this class out of the month. ${hasWords ? "Its words, yours included, are" : "It is"} kept among the classes taken out.`;
