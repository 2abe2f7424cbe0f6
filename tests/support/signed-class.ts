/** The good class signed off, and classes taught from it as a device would tell them. */

import { readEdition } from "#db/repos/edition-repo.ts";
import type { Card } from "#lib/card/schema.ts";
import { actEvent, type PlainAct } from "#lib/floor/acts.ts";
import { classLogUntil } from "#lib/floor/class-log.ts";
import type { ClassLog } from "#lib/floor/class-log-schema.ts";
import type { FloorLog } from "#lib/floor/log.ts";
import { planDoc } from "#server/context/live-documents.ts";
import { createPlan } from "#server/plans/create-plan.ts";
import { handIn } from "#server/sign-off/hand-in.ts";
import { readForSignOff } from "#server/sign-off/read-for-sign-off.ts";
import { signPlan } from "#server/sign-off/sign-plan.ts";
import { writeGoodClass } from "./good-class.ts";
import { must, type PlanStudio, ROOMS } from "./plan-studio.ts";

/** Edition 1 of a plan of Jonas's for the Harbour room, signed by Ines. */
export async function signedClass(s: PlanStudio): Promise<{ readonly id: string; readonly card: Card }> {
  const { jonas, ines } = s.people;
  const made = { title: "Pull & press", lengthSeconds: 600, roomId: ROOMS.harbour };
  const { id } = must(createPlan(s.app, jonas, made));
  await writeGoodClass(s, planDoc(id), [jonas, jonas]);
  must(await handIn(s.app, jonas, id));
  const { hash } = must(await readForSignOff(s.app, ines, id));
  must(await signPlan(s.app, ines, id, { hash }));
  const card = readEdition(s.db, id, 1)?.card.card;
  if (!card) throw new Error("it was signed just now");
  return { id, card };
}

/** What a coach touched and when, in seconds from the start. */
export type Touches = readonly (readonly [PlainAct, number])[];

/** The log of a class taught like that, to its end. `session` tells classes apart. */
export function taughtLog(card: Card, touches: Touches, session: number, kind: ClassLog["kind"] = "class"): ClassLog {
  let log: FloorLog = [{ type: "start", at: 0 }];
  for (const [act, seconds] of touches) log = [...log, actEvent(card, log, act, seconds * 1000)];
  const clock = { mono: 0, wall: Date.UTC(2026, 10, 1, 9) + session * 86_400_000 };
  const made = classLogUntil(card, log, 36_000_000, { sessionId: String(session).padStart(32, "0"), kind, clock });
  if (!made) throw new Error("the class has begun");
  return made;
}
