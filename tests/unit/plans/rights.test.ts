/** Who is refused what: each of a lead's acts for everybody else, and everything for crew, managers, devices, nobody. */

import { afterEach, beforeEach, describe, expect, it } from "vitest";
import type { Actor, Person } from "#lib/policy/can.ts";
import type { Result } from "#server/base/result.ts";
import { planDoc } from "#server/context/live-documents.ts";
import { listPlanEditions, listSignedPlans } from "#server/editions/editions.ts";
import { changePlan } from "#server/plans/change-plan.ts";
import { createPlan } from "#server/plans/create-plan.ts";
import { deletePlan, restorePlan } from "#server/plans/delete-plan.ts";
import { duplicatePlan } from "#server/plans/duplicate-plan.ts";
import { exportPlan } from "#server/plans/export-plan.ts";
import { importPlan } from "#server/plans/import-plan.ts";
import { listDeletedPlans, listPlans } from "#server/plans/list-plans.ts";
import { readPlanDetail, readPlanRecord } from "#server/plans/plan-detail.ts";
import { readStart } from "#server/plans/plan-start.ts";
import { sharePlan } from "#server/plans/share-plan.ts";
import { readProgramme } from "#server/programme/read-programme.ts";
import { handBack } from "#server/sign-off/hand-back.ts";
import { handIn, takeBack } from "#server/sign-off/hand-in.ts";
import { readForSignOff } from "#server/sign-off/read-for-sign-off.ts";
import { signPlan } from "#server/sign-off/sign-plan.ts";
import { addComment, listPlanThreads, openThread, settlePlanThread } from "#server/threads/threads.ts";
import { writeGoodClass } from "#tests/support/good-class.ts";
import { must, openStudio, outcome, type PlanStudio, ROOMS } from "#tests/support/plan-studio.ts";

let s: PlanStudio;
let id = "";
let threadId = "";
beforeEach(async () => {
  s = openStudio();
  const { jonas, ines } = s.people;
  id = must(createPlan(s.app, jonas, { title: "Pull and press", lengthSeconds: 600, roomId: ROOMS.harbour })).id;
  await writeGoodClass(s, planDoc(id), [jonas, jonas]);
  threadId = must(openThread(s.app, ines, id, { anchor: { kind: "plan" }, body: "Hm" })).id;
  must(await handIn(s.app, jonas, id));
});
afterEach(() => s.stop());

const device: Actor = { kind: "device", id: "d1", roomId: ROOMS.harbour };
const hash = "0".repeat(64);
const onPlan = async (actor: Actor): Promise<Record<string, Result<unknown>>> => ({
  read: readPlanDetail(s.app, actor, id),
  record: readPlanRecord(s.app, actor, id),
  start: readStart(s.app, actor, id, ""),
  file: exportPlan(s.app, actor, id),
  duplicate: duplicatePlan(s.app, actor, id),
  change: changePlan(s.app, actor, id, { team: true }),
  share: sharePlan(s.app, actor, id, { userId: "marta", on: true }),
  threads: listPlanThreads(s.app, actor, id),
  open: openThread(s.app, actor, id, { anchor: { kind: "plan" }, body: "x" }),
  comment: addComment(s.app, actor, threadId, "x"),
  settle: settlePlanThread(s.app, actor, threadId, true),
  takeBack: await takeBack(s.app, actor, id),
  handIn: await handIn(s.app, actor, id),
  handBack: await handBack(s.app, actor, id, { note: "x" }),
  readForSignOff: await readForSignOff(s.app, actor, id),
  sign: await signPlan(s.app, actor, id, { hash }),
  delete: deletePlan(s.app, actor, id),
  restore: restorePlan(s.app, actor, id),
});
const REFUSED = new Set(["not-found", "no-right", "not-signed-in"]);

describe("a plan", () => {
  it("is closed to crew, managers, devices, nobody, and coaches and trainees it is not shared with", async () => {
    const { sam, petra, marta, noor } = s.people;
    for (const actor of [sam, petra, marta, noor, device, null]) {
      for (const [act, result] of Object.entries(await onPlan(actor))) {
        expect(REFUSED, `${actor === null ? "nobody" : actor.id}: ${act}`).toContain(outcome(result));
      }
    }
  });

  it("lets its owner do everything but a lead's acts", async () => {
    const { jonas } = s.people;
    const results = await onPlan(jonas);
    const refused = Object.entries(results).filter(([, r]) => REFUSED.has(outcome(r)));
    expect(refused.map(([act]) => act)).toEqual(["handBack", "readForSignOff", "sign"]);
    expect(results.settle).toMatchObject({ ok: false, error: { code: "for-a-lead" } });
    for (const [, r] of refused) expect(outcome(r)).toBe("no-right");
  });

  it("lets a lead comment, return with notes and sign, but not write, offer for reading or delete what is not the team's", async () => {
    const { ines } = s.people;
    for (const refused of [
      await handIn(s.app, ines, id),
      await takeBack(s.app, ines, id),
      deletePlan(s.app, ines, id),
    ]) {
      expect(outcome(refused)).toBe("no-right");
    }
    expect(outcome(changePlan(s.app, ines, id, { roomId: ROOMS.loft }))).toBe("no-right");
    expect(outcome(await signPlan(s.app, ines, id, { hash }))).toBe("not-read"); // hers to sign, had she read it
    expect(outcome(addComment(s.app, ines, threadId, "x"))).toBe("ok");
    expect(outcome(await handBack(s.app, ines, id, { note: "x" }))).toBe("ok");
  });

  it("opens to a coach when it is shared or becomes the team's, and closes again", async () => {
    const { jonas, marta, noor } = s.people;
    const writes = async (who: Person) => must(await listPlans(s.app, who)).plans.find((p) => p.id === id)?.writes;
    const asked = s.refreshed();
    must(sharePlan(s.app, jonas, id, { userId: marta.id, on: true }));
    expect(await writes(marta)).toBe(true);
    must(sharePlan(s.app, jonas, id, { userId: marta.id, on: false }));
    expect(await writes(marta)).toBeUndefined();
    must(changePlan(s.app, jonas, id, { team: true }));
    expect([await writes(marta), await writes(noor)]).toEqual([true, undefined]); // the team is the coaches and leads
    must(changePlan(s.app, jonas, id, { team: false }));
    expect(await writes(marta)).toBeUndefined();
    expect(s.refreshed()).toBe(asked + 4); // open pages are asked about again each time
  });

  it("is not shared with somebody who writes no plans, nor with nobody", () => {
    const { jonas } = s.people;
    expect(outcome(sharePlan(s.app, jonas, id, { userId: "sam", on: true }))).toBe("cannot-write");
    expect(outcome(sharePlan(s.app, jonas, id, { userId: "ghost", on: true }))).toBe("no-such-person");
    expect(outcome(sharePlan(s.app, jonas, id, { userId: "noor", on: true }))).toBe("ok");
  });
});

describe("the studio", () => {
  it("lets trainees, coaches and leads begin plans, and nobody else", () => {
    const made = (actor: Actor) => outcome(createPlan(s.app, actor, { title: "New", lengthSeconds: 600 }));
    const { jonas, marta, ines, petra, sam } = s.people;
    expect([jonas, marta, ines].map(made)).toEqual(["ok", "ok", "ok"]);
    expect([petra, sam, device].map(made)).toEqual(["no-right", "no-right", "no-right"]);
    expect(made(null)).toBe("not-signed-in");
    expect(outcome(importPlan(s.app, sam, {}))).toBe("no-right");
  });

  it("shows crew and managers no unsigned plan", async () => {
    for (const who of [s.people.sam, s.people.petra]) {
      expect(must(await listPlans(s.app, who)).plans).toEqual([]);
      expect(must(listDeletedPlans(s.app, who)).plans).toEqual([]);
      expect(must(listSignedPlans(s.app, who)).plans).toEqual([]);
      expect(outcome(listPlanEditions(s.app, who, id))).toBe("not-found");
    }
    expect(outcome(await listPlans(s.app, device))).toBe("no-right");
    expect(outcome(listSignedPlans(s.app, device))).toBe("no-right");
  });

  it("shows the programme to all but trainees and devices", () => {
    const shown = (actor: Actor) => outcome(readProgramme(s.app, actor, "2026-11"));
    const { jonas, marta, petra, sam } = s.people;
    expect([marta, petra, sam].map(shown)).toEqual(["ok", "ok", "ok"]);
    expect([jonas, device].map(shown)).toEqual(["no-right", "no-right"]);
    expect(shown(null)).toBe("not-signed-in");
    expect(outcome(readProgramme(s.app, marta, "2046-11"))).toBe("not-found");
    expect(outcome(readProgramme(s.app, marta, "2026-13"))).toBe("not-found");
  });
});
