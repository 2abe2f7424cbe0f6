/** What each role is called and what it may do. */
import type { Role } from "#lib/policy/can.ts";

export const ROLE_WORDS: Record<Role, { readonly name: string; readonly may: string }> = {
  trainee: { name: "trainee", may: "writes their own plans and those shared with them, and offers them for reading" },
  coach: { name: "coach", may: "writes every team plan and the programme, and runs the floor" },
  lead: { name: "lead", may: "does all a coach does, comments on every plan, returns plans with notes and signs off" },
  manager: { name: "manager", may: "looks after people, rooms, devices, studio standards and the studio’s record" },
  crew: { name: "crew", may: "reads signed plans and follows a class live" },
};
