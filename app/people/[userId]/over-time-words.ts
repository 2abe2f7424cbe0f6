/** The sentences of one person's page over time. */
import { plainNumber, plural } from "#lib/plan/format.ts";
import type { TaughtAgainstPlan } from "#lib/progress/taught.ts";

export const OVER_TIME = {
  mine: "Your marks and classes",
  leadMine:
    "What is said of your plans and classes, over time. You, the leads and the managers of the studio can read it; nobody else.",
  lead: "What is said of this person’s plans and classes, over time. They read the same page; besides them only leads and managers can.",
  marks: "Marks",
  noMarks: "No marks have been set yet. A lead sets them on a round of reading or on a class.",
  older: "Older marks",
  newest: "The newest marks",
  returning: "Findings that return",
  noneReturn: "No rule has found the same in two plans as they were first offered.",
  unasked: "Fixed without being asked",
  noneUnasked:
    "Nothing that is known for certain: a plan as it was returned is compared with how it was offered again, without all that anybody asked for.",
  classes: "Classes taught, against the plan",
  noClasses: "No class has been logged for a slot of this person in the programme.",
} as const;

export const foundTimes = (count: number): string => plural(count, "time");

/** "On the second." or "48 s over, held 20 s, ended early, 3 steps off by 5 s or more." */
export function againstPlan({ planned, took, held, whole, off }: TaughtAgainstPlan): string {
  const by = Math.round(took + held - planned);
  const parts = [
    whole ? "" : "ended early",
    whole && by !== 0 ? `${plainNumber(Math.abs(by))} s ${by > 0 ? "over" : "under"}` : "",
    held > 0 ? `held ${plainNumber(Math.round(held))} s` : "",
    off.length > 0 ? `${plural(off.length, "step")} off by 5 s or more` : "",
  ].filter((part) => part !== "");
  if (parts.length === 0) return "On the second.";
  const words = parts.join(", ");
  return `${words[0]?.toUpperCase()}${words.slice(1)}.`;
}
