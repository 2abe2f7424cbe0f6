/**
 * The first round of the trainee's plan: offered as it was then, read, returned with notes and marked. The plan as the demo
 * shows it is what became of it.
 */
import { setItemField } from "#lib/doc/write.ts";
import type { DocName } from "#lib/protocol/messages.ts";
import type { Springline } from "#server/context/springline.ts";
import { setMarks } from "#server/marks/set-marks.ts";
import { makeProposal } from "#server/proposals/make-proposal.ts";
import { handBack } from "#server/sign-off/hand-back.ts";
import { handIn } from "#server/sign-off/hand-in.ts";
import { type Cast, must } from "./add-people.ts";

/** Seconds of items, as they were at first and as they are in the demo's plan. */
const THEN: readonly (readonly [item: string, seconds: number, now: number])[] = [
  ["forearm-pike", 45, 60],
  ["push-up-slow", 90, 60],
  ["fly-kneeling", 75, 60],
];

export async function firstRound(app: Springline, { jonas, ines }: Cast, id: string): Promise<void> {
  writeSeconds(app, jonas.id, id, (then) => then);
  must(await handIn(app, jonas, id, "A first go. Is the order right?"));
  const mainPoints = [
    "The class runs over its slot: shorten the push-ups first.",
    "Say every change of springs before the carriage moves.",
    "Two safety lines are missing.",
  ];
  const note = "A good arc, and the arms are well chosen. Look at the plates one by one, then offer it again.";
  must(await handBack(app, ines, id, { note, mainPoints }));
  must(
    setMarks(app, ines, id, {
      about: { kind: "round", round: 1 },
      levels: { "set-up": 2, breath: 2, form: 3, ways: 2, changes: 1, time: 1, safety: 2 },
      sentence: "Plan the changes first: each wants its words and its seconds.",
    }),
  );
  writeSeconds(app, jonas.id, id, (_, now) => now);
}

/** A change that waits for the trainee's answer. */
export function proposeBothSides(app: Springline, { ines }: Cast, id: string): void {
  const item = "trunk-rotation-kneeling-left";
  const part = { id: "seconds", kind: "field", item, field: "seconds", was: 45, becomes: 60 } as const;
  must(makeProposal(app, ines, id, { itemId: item, note: "Then both sides get the same.", parts: [part] }));
}

function writeSeconds(app: Springline, by: string, id: string, of: (then: number, now: number) => number): void {
  const name: DocName = { kind: "plan", key: id };
  app.documents.transact(name, by, (doc) => {
    for (const [item, then, now] of THEN) setItemField({ doc, origin: "demo" }, item, "seconds", of(then, now));
  });
}
