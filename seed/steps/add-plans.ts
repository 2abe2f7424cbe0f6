/** Adds the demo plans through the same commands that pages use, each by its authors. */

import { scriptOf } from "#lib/doc/read.ts";
import { flatScript } from "#lib/margin/flat-script.ts";
import { pinWords } from "#lib/margin/pin.ts";
import type { Plan } from "#lib/plan/schema.ts";
import type { Person } from "#lib/policy/can.ts";
import { type Anchor, type DocName, formatDocName } from "#lib/protocol/messages.ts";
import { FIRST_TRY } from "#seed/plans/first-try.ts";
import { UPPER_BODY_AND_TRUNK } from "#seed/plans/upper-body-and-trunk.ts";
import { WHOLE_BODY } from "#seed/plans/whole-body.ts";
import { writeBeginning, writeRest } from "#seed/plans/write-plan.ts";
import type { Springline } from "#server/context/springline.ts";
import { createPlan } from "#server/plans/create-plan.ts";
import { listPlans } from "#server/plans/list-plans.ts";
import { sharePlan } from "#server/plans/share-plan.ts";
import { handIn } from "#server/sign-off/hand-in.ts";
import { readForSignOff } from "#server/sign-off/read-for-sign-off.ts";
import { signPlan } from "#server/sign-off/sign-plan.ts";
import { openThread } from "#server/threads/threads.ts";
import { type Cast, must } from "./add-people.ts";
import { firstRound, proposeBothSides } from "./first-round.ts";
import type { PlanKey } from "./month-slots.ts";

export interface DemoRooms {
  readonly harbour: string;
  readonly loft: string;
}

/** Adds the plans that are missing. Idempotent: a plan is skipped if its author has one with that title. */
export async function addPlans(app: Springline, cast: Cast, rooms: DemoRooms): Promise<Record<PlanKey, string>> {
  const { marta, jonas, ines } = cast;
  const upper = await planOf(app, {
    plan: UPPER_BODY_AND_TRUNK,
    by: marta,
    and: jonas,
    roomId: rooms.harbour,
    team: true,
  });
  const whole = await planOf(app, { plan: WHOLE_BODY, by: marta, and: ines, roomId: rooms.loft, team: true });
  if (whole.made) await signOff(app, cast, whole.id);
  const first = await planOf(app, { plan: FIRST_TRY, by: jonas, roomId: rooms.harbour, team: false });
  if (first.made) {
    await firstRound(app, cast, first.id);
    await handFirstTryIn(app, cast, first.id);
    proposeBothSides(app, cast, first.id);
  }
  return { upper: upper.id, whole: whole.id, first: first.id };
}

interface Writing {
  readonly plan: Plan;
  readonly by: Person;
  /** The author of the second half. */
  readonly and?: Person;
  readonly roomId: string;
  readonly team: boolean;
}

async function planOf(
  app: Springline,
  { plan, by, and, roomId, team }: Writing,
): Promise<{ id: string; made: boolean }> {
  const there = must(await listPlans(app, by)).plans.find((p) => p.title === plan.title && p.ownerId === by.id);
  if (there) return { id: there.id, made: false };
  const { id } = must(createPlan(app, by, { title: plan.title, lengthSeconds: plan.lengthSeconds, roomId, team }));
  const doc: DocName = { kind: "plan", key: id };
  const upTo = and ? Math.ceil(plan.items.length / 2) : plan.items.length;
  app.documents.transact(doc, by.id, (d) => writeBeginning(d, plan, upTo, app.now()));
  if (and) {
    if (and.roles.includes("trainee")) must(sharePlan(app, by, id, { userId: and.id, on: true }));
    app.documents.transact(doc, and.id, (d) => writeRest(d, plan, upTo));
  }
  return { id, made: true };
}

async function signOff(app: Springline, { marta, ines }: Cast, id: string): Promise<void> {
  must(await handIn(app, marta, id, "Ready for the Loft. Ines wrote the second half."));
  const { hash } = must(await readForSignOff(app, ines, id));
  must(await signPlan(app, ines, id, { hash, note: "Good pace. Keep the pause before the handles." }));
}

async function handFirstTryIn(app: Springline, { jonas, ines }: Cast, id: string): Promise<void> {
  const words = "Only 20 seconds left";
  const anchors: [Anchor, string][] = [
    [
      { kind: "item", itemId: "trunk-rotation-kneeling-left" },
      "The left side gets 15 seconds less than the right. Which of the two did you mean?",
    ],
    [
      wordsAnchor(app, id, "triceps-press-forward", words),
      "This is not the last move, and the seconds change when you move it. Use a live field instead.",
    ],
  ];
  for (const [anchor, body] of anchors) must(openThread(app, ines, id, { anchor, body }));
  must(await handIn(app, jonas, id, "My first whole class. I am not sure about the springs in the pike."));
}

function wordsAnchor(app: Springline, planId: string, itemId: string, words: string): Anchor {
  const name: DocName = { kind: "plan", key: planId };
  const pin = app.documents.withDoc(name, (doc) => {
    const script = scriptOf(doc, itemId);
    const from = script ? flatScript(script).text.indexOf(words) : -1;
    return script && from >= 0 ? pinWords(script, itemId, from, from + words.length) : null;
  });
  if (!pin) throw new Error(`${formatDocName(name)} does not contain "${words}".`);
  return pin;
}
