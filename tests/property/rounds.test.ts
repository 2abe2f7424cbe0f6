/** [INV-27] Whatever steps people take, and in which order: a round has one beginning and at most one end, and moments never change. */
import fc from "fast-check";
import { afterEach, beforeEach, expect, test } from "vitest";
import { listMoments, type MomentRow } from "#db/repos/moment-repo.ts";
import { readPlanRow } from "#db/repos/plan-repo.ts";
import { listRounds, type RoundRow } from "#db/repos/round-repo.ts";
import { setItemField } from "#lib/doc/write.ts";
import type { Person } from "#lib/policy/can.ts";
import { planDoc } from "#server/context/live-documents.ts";
import { createPlan } from "#server/plans/create-plan.ts";
import { takeUp } from "#server/rounds/take-up.ts";
import { handBack } from "#server/sign-off/hand-back.ts";
import { handIn, takeBack } from "#server/sign-off/hand-in.ts";
import { readForSignOff } from "#server/sign-off/read-for-sign-off.ts";
import { signPlan } from "#server/sign-off/sign-plan.ts";
import { withdrawEdition } from "#server/sign-off/withdraw-edition.ts";
import { writeGoodClass } from "../support/good-class.ts";
import { often } from "../support/long.ts";
import { must, openStudio, type PlanStudio, ROOMS } from "../support/plan-studio.ts";

let s: PlanStudio;
beforeEach(() => {
  s = openStudio();
});
afterEach(() => s.stop());

const OTHER_LEAD: Person = { kind: "person", id: "petra", roles: ["lead"] };
const STEPS = ["offer", "return", "sign", "take back", "take up", "let go", "take over", "withdraw", "write"] as const;
type StepName = (typeof STEPS)[number];

interface Taken {
  readonly step: StepName;
  readonly other: boolean;
  readonly pause: number;
}
const taken = fc.record({
  step: fc.constantFrom(...STEPS),
  other: fc.boolean(),
  pause: fc.integer({ min: 0, max: 3 }),
});

/** Refusals are as good an answer as any: what is stored is looked at afterwards. */
async function take(id: string, { step, other }: Taken, at: number): Promise<void> {
  const { ines, jonas } = s.people;
  const lead = other ? OTHER_LEAD : ines;
  const acts: Readonly<Record<StepName, () => unknown>> = {
    offer: () => handIn(s.app, jonas, id, "Ready"),
    return: () => handBack(s.app, lead, id, { note: "Slower", mainPoints: other ? ["Slower"] : [] }),
    sign: async () => {
      const read = await readForSignOff(s.app, lead, id);
      if (read.ok) await signPlan(s.app, lead, id, { hash: read.value.hash });
    },
    "take back": () => takeBack(s.app, jonas, id),
    "take up": () => takeUp(s.app, lead, id, { on: true }),
    "let go": () => takeUp(s.app, lead, id, { on: false }),
    "take over": () => takeUp(s.app, lead, id, { on: true, from: other ? ines.id : OTHER_LEAD.id }),
    withdraw: () => withdrawEdition(s.app, lead, { planId: id, number: 1 }, "Worn spring"),
    write: () => s.write(planDoc(id), jonas, (w) => setItemField(w, "m1", "seconds", 90 + (at % 20))),
  };
  await acts[step]();
}

function expectRounds(id: string, moments: readonly MomentRow[], rounds: readonly RoundRow[]): void {
  expect(rounds.map(({ number }) => number)).toEqual(rounds.map((_, i) => i + 1));
  expect(rounds.slice(0, -1).every(({ outcome }) => outcome !== null)).toBe(true);
  expect(readPlanRow(s.db, id)?.state === "handed-in").toBe(rounds.at(-1)?.outcome === null);
  for (const { number, outcome } of rounds) {
    const kinds = moments.filter(({ round }) => round === number).map(({ kind }) => kind);
    expect(kinds.filter((kind) => kind !== "withdrawn")).toEqual(outcome === null ? ["offered"] : ["offered", outcome]);
    expect(kinds[0]).toBe("offered");
  }
}

test("a round has one beginning and at most one end; what was kept stays as it was", { timeout: 300_000 }, async () => {
  let ended = 0;
  await fc.assert(
    fc.asyncProperty(fc.array(taken, { minLength: 6, maxLength: 16 }), async (steps) => {
      const { jonas, marta } = s.people;
      const made = must(createPlan(s.app, jonas, { title: "Rows", lengthSeconds: 600, roomId: ROOMS.harbour }));
      await writeGoodClass(s, planDoc(made.id), [jonas, marta]);
      must(await handIn(s.app, jonas, made.id));
      let before = { moments: listMoments(s.db, made.id), rounds: listRounds(s.db, made.id) };
      for (const [at, step] of steps.entries()) {
        s.advance(step.pause * 1000);
        await take(made.id, step, at);
        const now = { moments: listMoments(s.db, made.id), rounds: listRounds(s.db, made.id) };
        expectRounds(made.id, now.moments, now.rounds);
        expect(now.moments.slice(0, before.moments.length)).toEqual(before.moments);
        const over = before.rounds.filter(({ outcome }) => outcome !== null);
        expect(now.rounds.slice(0, over.length)).toEqual(over);
        before = now;
      }
      ended += before.rounds.filter(({ outcome }) => outcome !== null).length;
    }),
    { numRuns: often(12, 150) },
  );
  expect(ended, "rounds did end").toBeGreaterThan(5);
});
