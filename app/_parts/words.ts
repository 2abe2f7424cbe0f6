/** Small words that several pages share: roles, lengths, days. Pure. */
import type { Role } from "#lib/policy/can.ts";

export const ROLE_WORDS: Record<Role, { readonly name: string; readonly may: string }> = {
  trainee: { name: "trainee", may: "writes own plans and those shared with them, hands them in" },
  coach: { name: "coach", may: "writes any team plan and the programme, runs the floor" },
  lead: { name: "lead", may: "all that, comments on any plan, hands back and signs off" },
  manager: { name: "manager", may: "people, rooms, cue devices, house standards, the record" },
  crew: { name: "crew", may: "reads signed plans and follows a class" },
};

export const STATE_WORDS = {
  "in-writing": "in writing",
  "handed-in": "handed in",
  "handed-back": "handed back",
  "signed-off": "signed off",
} as const;

/** "25 min"; "25:30" when it is not whole minutes. */
export function lengthWords(seconds: number): string {
  const rest = seconds % 60;
  const minutes = Math.floor(seconds / 60);
  return rest === 0 ? `${minutes} min` : `${minutes}:${String(rest).padStart(2, "0")}`;
}

/** "25 November, 14:05" in the reader's own time zone when run in the browser. */
export function momentWords(ms: number): string {
  const at = new Date(ms);
  const day = at.toLocaleDateString("en-GB", { day: "numeric", month: "long" });
  return `${day}, ${at.toLocaleTimeString("en-GB", { hour: "2-digit", minute: "2-digit" })}`;
}

/** The day alone, in UTC: for a page whose reader's zone is not known yet. */
export const dayOfMoment = (ms: number): string =>
  new Date(ms).toLocaleString("en-GB", { day: "numeric", month: "long", timeZone: "UTC" });
