/** The proof beside people at work: in slices, one at a time, for managers, with rows added meanwhile. */
import { setTimeout as pause } from "node:timers/promises";
import { afterAll, beforeAll, expect, test } from "vitest";
import { addToRecord } from "#db/repos/record-repo.ts";
import { inTransaction } from "#db/transaction.ts";
import { createPlan } from "#server/plans/create-plan.ts";
import { proveRecord } from "#server/record/prove-record.ts";
import { readProving, startProving } from "#server/record/proving.ts";
import { eventually } from "#tests/support/eventually.ts";
import { must, outcome, type PlanStudio, ROOMS } from "#tests/support/plan-studio.ts";
import { recordedStudio } from "#tests/support/recorded-studio.ts";

/** More than one slice by far. */
const MORE = 20_000;
let s: PlanStudio;
beforeAll(async () => {
  s = await recordedStudio();
  inTransaction(s.db, () => {
    for (let n = 0; n < MORE; n++)
      addToRecord(s.db, { at: n, actorId: "ines", subject: "plan/p", kind: "x", body: { n } });
  });
}, 60_000);
afterAll(() => s.stop());

const state = () => must(readProving(s.app, s.people.petra)).state;

const usedMs = (): number => {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
};

test("[INV-25] [INV-26] nobody waits for it, and what is done meanwhile is part of it", async () => {
  expect(state()).toBe("none");
  expect(must(startProving(s.app, s.people.petra))).toMatchObject({ state: "running" });
  expect(must(startProving(s.app, s.people.petra))).toMatchObject({ state: "running" });
  let longest = 0;
  let turns = 0;
  let last = usedMs();
  while (state() === "running") {
    await pause(1);
    if (turns++ === 5) must(createPlan(s.app, s.people.jonas, { title: "Now", lengthSeconds: 60, roomId: ROOMS.loft }));
    longest = Math.max(longest, usedMs() - last);
    last = usedMs();
  }
  expect(must(readProving(s.app, s.people.petra))).toMatchObject({ state: "holds", byName: "Petra" });
  expect(turns).toBeGreaterThan(10);
  // Of the processor, since the machine may be busy: a slice takes 10 ms, and a plan was made in one of the turns.
  expect(longest).toBeLessThan(250);
  expect(proveRecord(s.db).holds).toBe(true);
});

test("what does not hold is told", async () => {
  s.db.raw.exec("DROP TRIGGER record_never_updated; UPDATE record SET actor_id = 'x' WHERE seq = 7");
  must(startProving(s.app, s.people.petra));
  await eventually("it ends", () => state() !== "running");
  expect(must(readProving(s.app, s.people.petra))).toMatchObject({ state: "broken", fault: { seq: 7 } });
});

test("it is the managers' to ask for", () => {
  for (const who of ["ines", "marta", "jonas", "sam"] as const) {
    expect(outcome(startProving(s.app, s.people[who])), who).toBe("no-right");
    expect(outcome(readProving(s.app, s.people[who])), who).toBe("no-right");
  }
});
