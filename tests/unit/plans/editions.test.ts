/** Signed editions: who reads them, in which forms, and that nothing can change one. */

import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { newestEditionsOfRoom, readEdition } from "#db/repos/edition-repo.ts";
import { listPlanEvents } from "#db/repos/event-repo.ts";
import { setPlanDeleted } from "#db/repos/plan-repo.ts";
import { sha256Hex } from "#lib/canonical/canonical.ts";
import { verifyCard } from "#lib/card/card.ts";
import { planParts } from "#lib/doc/layout.ts";
import { setHead, setText } from "#lib/doc/write.ts";
import { parsePlan } from "#lib/plan-file/parse.ts";
import { planDoc } from "#server/context/live-documents.ts";
import {
  type EditionForm,
  editionFile,
  fileStem,
  listPlanEditions,
  listSignedPlans,
  readSignedEdition,
} from "#server/editions/editions.ts";
import { archivePlan } from "#server/plans/archive-plan.ts";
import { createPlan } from "#server/plans/create-plan.ts";
import { deletePlan } from "#server/plans/delete-plan.ts";
import { handIn } from "#server/sign-off/hand-in.ts";
import { readForSignOff } from "#server/sign-off/read-for-sign-off.ts";
import { signPlan } from "#server/sign-off/sign-plan.ts";
import { writeGoodClass } from "#tests/support/good-class.ts";
import { must, openStudio, outcome, type PlanStudio, ROOMS } from "#tests/support/plan-studio.ts";

let s: PlanStudio;
let id = "";
beforeEach(async () => {
  s = openStudio();
  const { jonas } = s.people;
  id = must(createPlan(s.app, jonas, { title: "Pull & press", lengthSeconds: 600, roomId: ROOMS.harbour })).id;
  await writeGoodClass(s, planDoc(id), [jonas, jonas]);
  await signOff();
});
afterEach(() => s.stop());

async function signOff(): Promise<void> {
  must(await handIn(s.app, s.people.jonas, id));
  const { hash } = must(await readForSignOff(s.app, s.people.ines, id));
  must(await signPlan(s.app, s.people.ines, id, { hash }));
}
const file = (who: keyof PlanStudio["people"], form: EditionForm, number = 1) =>
  editionFile(s.app, s.people[who], { planId: id, number, form });

describe("a signed edition", () => {
  it("[INV-13] cannot be changed, deleted or replaced, nor can the record", () => {
    const before = readEdition(s.db, id, 1);
    const { raw } = s.db;
    const tries = [
      "UPDATE edition SET note = 'other'",
      "UPDATE OR REPLACE edition SET number = 2",
      "DELETE FROM edition",
      "INSERT OR REPLACE INTO edition SELECT plan_id, number, 'x', plan_json, card_json, findings_json, signed_by, signed_at, note, accepted_json, round FROM edition",
      "UPDATE plan_event SET kind = 'signed-off'",
      "DELETE FROM plan_event",
      "INSERT OR REPLACE INTO plan_event SELECT id, plan_id, at, 'somebody else', kind, note, hash FROM plan_event",
    ];
    for (const sql of tries) expect(() => raw.prepare(sql).run(), sql).toThrow(/never|only added to/);
    expect(readEdition(s.db, id, 1)).toEqual(before);
    expect(listPlanEvents(s.db, id).map((e) => e.kind)).toEqual(["created", "handed-in", "signed-off"]);
  });

  it("is read by crew, managers, coaches and leads, and by a trainee only where they may read the plan", () => {
    for (const who of ["sam", "petra", "marta", "ines", "jonas"] as const) {
      expect(must(listPlanEditions(s.app, s.people[who], id)).editions).toMatchObject([
        { number: 1, signedByName: "Ines" },
      ]);
      expect(must(listSignedPlans(s.app, s.people[who])).plans.map((p) => p.planId)).toEqual([id]);
      expect(outcome(file(who, "card"))).toBe("ok");
    }
    expect(outcome(listPlanEditions(s.app, s.people.noor, id))).toBe("not-found");
    expect(must(listSignedPlans(s.app, s.people.noor)).plans).toEqual([]);
    expect(outcome(file("noor", "plan"))).toBe("not-found");
    expect(outcome(editionFile(s.app, null, { planId: id, number: 1, form: "plan" }))).toBe("not-signed-in");
    const device = { kind: "device", id: "d", roomId: ROOMS.harbour } as const;
    expect(outcome(editionFile(s.app, device, { planId: id, number: 1, form: "card" }))).toBe("no-right");
  });

  it("is not there for whoever may not read the plan, when it was never signed: ids tell nothing", () => {
    const made = { title: "Draft", lengthSeconds: 600, roomId: ROOMS.harbour, team: false };
    const draft = must(createPlan(s.app, s.people.jonas, made)).id;
    for (const who of ["sam", "petra", "marta", "noor"] as const) {
      expect(outcome(listPlanEditions(s.app, s.people[who], draft)), who).toBe("not-found");
    }
    for (const who of ["jonas", "ines"] as const) {
      expect(must(listPlanEditions(s.app, s.people[who], draft))).toEqual({ editions: [] });
    }
  });

  it("comes as the plan byte for byte, as a card that verifies, and as two tracks", () => {
    const edition = must(readSignedEdition(s.app, s.people.sam, id, 1));
    const plan = must(file("sam", "plan"));
    expect(sha256Hex(plan.text)).toBe(edition.hash);
    expect(parsePlan(plan.text)).toMatchObject({ ok: true });
    expect(plan.fileName).toBe("pull-press-edition-1.plan.json");
    const card = must(file("sam", "card"));
    expect(verifyCard(JSON.parse(card.text), s.app.keys.publicKey, s.app.now())).toMatchObject({ ok: true });
    const forged = JSON.parse(card.text);
    forged.card.plan.title = "Something else";
    expect(verifyCard(forged, s.app.keys.publicKey, s.app.now())).toMatchObject({ ok: false });
    expect(must(file("sam", "cues.vtt"))).toMatchObject({ type: "text/vtt; charset=utf-8" });
    expect(must(file("sam", "cues.vtt")).text).toMatch(/^WEBVTT /);
    expect(must(file("sam", "chapters.vtt")).text).toContain("Warm-up");
    for (const number of [0, 2, -1, 1.5, Number.NaN]) expect(outcome(file("sam", "plan", number))).toBe("not-found");
  });

  it("keeps its title and findings when the plan is written on", async () => {
    await s.write(planDoc(id), s.people.jonas, (w) => {
      setText(w, planParts(w.doc).title, "Another title");
      setHead(w, "level", "open");
    });
    expect(must(listPlanEditions(s.app, s.people.sam, id)).editions[0]?.title).toBe("Pull & press");
    expect(must(listSignedPlans(s.app, s.people.sam)).plans[0]).toMatchObject({ title: "Pull & press", number: 1 });
    await signOff();
    expect(must(listSignedPlans(s.app, s.people.sam)).plans[0]).toMatchObject({ title: "Another title", number: 2 });
  });

  it("reaches the devices of its room: the newest only, also while the plan is archived, and it is never deleted", async () => {
    const cards = (room: string) => newestEditionsOfRoom(s.db, room).map(({ planId, number }) => `${planId} ${number}`);
    expect(cards(ROOMS.harbour)).toEqual([`${id} 1`]);
    expect(cards(ROOMS.loft)).toEqual([]);
    await s.write(planDoc(id), s.people.jonas, (w) => setHead(w, "level", "open"));
    expect(cards(ROOMS.harbour)).toEqual([`${id} 1`]); // written on, not signed: the floor keeps what was signed
    await signOff();
    expect(cards(ROOMS.harbour)).toEqual([`${id} 2`]);
    expect(outcome(deletePlan(s.app, s.people.jonas, id))).toBe("was-signed");
    expect(() => setPlanDeleted(s.db, id, 1)).toThrow("a signed plan is never deleted");
    must(archivePlan(s.app, s.people.jonas, id, true));
    expect(cards(ROOMS.harbour)).toEqual([`${id} 2`]);
    expect(must(file("sam", "card")).text).toContain("Pull");
  });
});

describe("a file's name", () => {
  it("is plain letters and digits of the title", () => {
    expect(fileStem("Oberkörper & Rumpf, 25 min")).toBe("oberkorper-rumpf-25-min");
    expect(fileStem('"; rm ../x')).toBe("rm-x");
    expect(fileStem("腕")).toBe("plan");
  });
});
