/** The sentences of what waits at the desk. */
import { plural } from "#lib/plan/format.ts";
import type { PlanState } from "#lib/protocol/messages.ts";

export const WAITING = {
  title: "Waiting for you",
  nothing: "Nothing is waiting for you.",
  isNew: "new",
  noClass: "no class yet",
} as const;

export const readBy = (name: string, isMe: boolean): string => (isMe ? "You are reading it" : `${name} is reading it`);

/** Why a class in the programme waits. */
export function unsignedWords(state: PlanState | null): string {
  switch (state) {
    case null:
      return "Your class has no plan yet.";
    case "handed-in":
      return "Your class has no signed plan: it is offered for reading.";
    case "handed-back":
      return "Your class has no signed plan: it was returned with notes.";
    default:
      return "Your class has no signed plan. Offer it for reading in time.";
  }
}

/** How a plan came back: by a return, or with an edition that was withdrawn. */
export function cameBackWords(withdrawn: number | null, byName: string | null): string {
  const by = byName === null ? "" : ` by ${byName}`;
  return withdrawn === null ? `returned${by}` : `edition ${withdrawn} withdrawn${by}, so it is to be signed off again`;
}

export const unreadLogs = (count: number): string => `${plural(count, "class log")} not looked at`;
