/** Plans beside their documents: made, listed, copied, deleted and brought back, in a file and out of one. */

import { afterEach, beforeEach, describe, expect, it } from "vitest";
import * as Y from "yjs";
import { listPlanEvents } from "#db/repos/event-repo.ts";
import { readPlanAuthors, readPlanRow } from "#db/repos/plan-repo.ts";
import { insertRoom, readRoom } from "#db/repos/room-repo.ts";
import { classStrip, readStrip } from "#lib/clock/class-strip.ts";
import { classClock } from "#lib/clock/clock.ts";
import { planParts } from "#lib/doc/layout.ts";
import { readItems } from "#lib/doc/read.ts";
import { deleteItem, setHead, setItemField, setText } from "#lib/doc/write.ts";
import { planDoc } from "#server/context/live-documents.ts";
import { changePlan } from "#server/plans/change-plan.ts";
import { createPlan, newPlanSchema } from "#server/plans/create-plan.ts";
import { deletePlan, restorePlan } from "#server/plans/delete-plan.ts";
import { duplicatePlan } from "#server/plans/duplicate-plan.ts";
import { exportPlan } from "#server/plans/export-plan.ts";
import { importPlan } from "#server/plans/import-plan.ts";
import { listDeletedPlans, listPlans } from "#server/plans/list-plans.ts";
import { readPlanDetail } from "#server/plans/plan-detail.ts";
import { sharePlan } from "#server/plans/share-plan.ts";
import { changeRoom } from "#server/rooms/manage-rooms.ts";
import { handIn } from "#server/sign-off/hand-in.ts";
import { listPlanThreads, openThread } from "#server/threads/threads.ts";
import { writeGoodClass } from "#tests/support/good-class.ts";
import { EQUIPMENT, must, openStudio, outcome, type PlanStudio, ROOMS } from "#tests/support/plan-studio.ts";
import { samplePlan } from "../card/sample-plan.ts";

let s: PlanStudio;
beforeEach(() => {
  s = openStudio();
});
afterEach(() => s.stop());

const newPlan = (title = "Pull and press") =>
  must(createPlan(s.app, s.people.jonas, { title, lengthSeconds: 600, roomId: ROOMS.harbour })).id;

describe("the class in small, for lists", () => {
  it("is there once the plan was checked, and has every move at its time", async () => {
    const id = must(importPlan(s.app, s.people.jonas, samplePlan())).id;
    await listPlans(s.app, s.people.jonas);
    await s.app.checks.idle();
    const [entry] = must(await listPlans(s.app, s.people.jonas)).plans.filter((plan) => plan.id === id);
    const plan = must(exportPlan(s.app, s.people.jonas, id));
    expect(readStrip(entry?.strip ?? "")).toEqual(classStrip(plan, classClock(plan).rows));
  });
});

describe("a new plan", () => {
  it("has one heading, its room's machines, and its maker as its author", () => {
    const id = newPlan();
    const plan = must(exportPlan(s.app, s.people.jonas, id));
    expect(plan).toMatchObject({ title: "Pull and press", lengthSeconds: 600, equipment: EQUIPMENT, moves: {} });
    expect(plan.items).toMatchObject([{ kind: "heading" }]);
    expect(readPlanAuthors(s.db, id)).toEqual(["jonas"]);
    expect(must(readPlanDetail(s.app, s.people.jonas, id))).toMatchObject({
      owner: { id: "jonas", name: "Jonas" },
      state: { state: "in-writing", edition: 0, editionHash: null },
      rights: { write: true, sign: false, delete: true },
    });
  });

  it("needs a title, a length within a minute and four hours, and a room that is there", async () => {
    const refused = (body: unknown) => !newPlanSchema.safeParse(body).success;
    expect(refused({ title: " ", lengthSeconds: 600 })).toBe(true);
    expect(refused({ title: "x", lengthSeconds: 59 })).toBe(true);
    expect(refused({ title: "x", lengthSeconds: 14401 })).toBe(true);
    expect(refused({ title: "x", lengthSeconds: 600.5 })).toBe(true);
    expect(refused({ title: "x", lengthSeconds: 600, owner: "ines" })).toBe(true);
    expect(refused({ title: "x", lengthSeconds: 600 })).toBe(false);
    const body = { title: "x", lengthSeconds: 600, roomId: "cellar" };
    expect(outcome(createPlan(s.app, s.people.jonas, body))).toBe("no-such-room");
    expect(must(await listPlans(s.app, s.people.jonas)).plans).toEqual([]);
  });

  it("leaves nothing behind when its document cannot be stored", async () => {
    const broken = {
      ...s.app.documents,
      create: () => {
        throw new Error("disk");
      },
    };
    const app = Object.create(s.app, { documents: { value: broken } });
    expect(() => createPlan(app, s.people.jonas, { title: "x", lengthSeconds: 600 })).toThrow("disk");
    expect(must(await listPlans(s.app, s.people.jonas)).plans).toEqual([]);
  });

  it("is listed under the title and length that its document has after a burst", async () => {
    const id = newPlan();
    await s.write(planDoc(id), s.people.jonas, (w) => {
      setText(w, planParts(w.doc).title, "Press and pull");
      setHead(w, "lengthSeconds", 900);
    });
    expect(must(await listPlans(s.app, s.people.jonas)).plans).toMatchObject([
      { id, title: "Press and pull", lengthSeconds: 900, ownerName: "Jonas", state: "in-writing" },
    ]);
  });
});

describe("the lead's desk", () => {
  it("has what was offered for reading first, the longest waiting on top, with its must-fix count", async () => {
    const { jonas, ines } = s.people;
    const [first, second, third] = [newPlan("First"), newPlan("Second"), newPlan("Third")];
    await writeGoodClass(s, planDoc(second), [jonas, jonas]);
    s.advance(1000);
    must(await handIn(s.app, jonas, second, "ready"));
    s.advance(1000);
    const { mustFix } = must(await handIn(s.app, jonas, first));
    expect(mustFix).toBeGreaterThan(0); // an empty class of ten minutes
    const desk = must(await listPlans(s.app, ines)).plans;
    expect(desk.map((p) => p.id)).toEqual([second, first, third]);
    expect(desk[0]?.handedIn).toMatchObject({ byName: "Jonas", note: "ready", mustFix: 0, at: s.app.now() - 1000 });
    expect(desk[1]?.handedIn).toMatchObject({ mustFix });
    expect(desk[2]?.handedIn).toBeUndefined();
  });
});

describe("a copy", () => {
  it("has everything the document holds, items taken out too, and no threads, shares or state", async () => {
    const { jonas, marta } = s.people;
    const id = newPlan();
    must(sharePlan(s.app, jonas, id, { userId: marta.id, on: true }));
    await writeGoodClass(s, planDoc(id), [jonas, jonas]);
    await s.write(planDoc(id), jonas, (w) => {
      deleteItem(w, "m4", 5);
      w.doc.getMap("head").set("of-a-later-version", 7);
    });
    must(openThread(s.app, jonas, id, { anchor: { kind: "plan" }, body: "Hm" }));
    must(await handIn(s.app, jonas, id));
    const copy = must(duplicatePlan(s.app, marta, id)).id;
    const row = readPlanRow(s.db, copy);
    expect(row).toMatchObject({
      title: "Pull and press (copy)",
      ownerId: "marta",
      state: "in-writing",
      sharedWith: [],
    });
    expect(must(listPlanThreads(s.app, marta, copy)).threads).toEqual([]);
    expect(readPlanAuthors(s.db, copy)).toEqual(["marta"]);
    const read = (of: string) =>
      s.app.documents.withDoc(planDoc(of), (d) => ({
        items: readItems(d),
        head: d.getMap("head").toJSON(),
        all: d.getMap("items").size,
      }));
    expect(read(copy)).toEqual(read(id));
    // They are two documents: writing in one changes nothing in the other.
    await s.write(planDoc(copy), marta, (w) => setItemField(w, "m1", "seconds", 95));
    expect(read(id).items[1]).toMatchObject({ seconds: 100 });
    expect(outcome(duplicatePlan(s.app, s.people.noor, id))).toBe("not-found");
  });
});

describe("deleting", () => {
  it("takes a plan away from everybody and brings it back whole", async () => {
    const { jonas, ines } = s.people;
    const id = newPlan();
    await writeGoodClass(s, planDoc(id), [jonas, jonas]);
    const before = must(exportPlan(s.app, jonas, id));
    const asked = s.refreshed();
    must(deletePlan(s.app, jonas, id));
    expect(s.refreshed()).toBe(asked + 1);
    expect(outcome(exportPlan(s.app, jonas, id))).toBe("not-found");
    expect(outcome(deletePlan(s.app, jonas, id))).toBe("not-found");
    expect(must(await listPlans(s.app, ines)).plans).toEqual([]);
    expect(must(listDeletedPlans(s.app, jonas)).plans).toMatchObject([{ id, deletedAt: s.app.now() }]);
    expect(outcome(restorePlan(s.app, ines, id))).toBe("no-right");
    must(restorePlan(s.app, jonas, id));
    must(restorePlan(s.app, jonas, id));
    expect(must(exportPlan(s.app, jonas, id))).toEqual(before);
    expect(listPlanEvents(s.db, id).map((e) => e.kind)).toEqual(["created", "deleted", "restored"]);
  });
});

describe("another room", () => {
  it("lends the plan its machines, and the findings are announced anew", async () => {
    const { jonas } = s.people;
    const id = newPlan();
    insertRoom(s.db, { id: "bare", name: "Bare room", equipment: { ...EQUIPMENT, name: "Bare", springs: [] } });
    must(changePlan(s.app, jonas, id, { roomId: "bare" }));
    expect(must(exportPlan(s.app, jonas, id)).equipment.name).toBe("Bare");
    await s.app.checks.idle();
    expect(s.last(planDoc(id), "checked")).toBeDefined();
    expect(outcome(changePlan(s.app, jonas, id, { roomId: "cellar" }))).toBe("no-such-room");
  });
});

describe("a spring that is taken out of a room", () => {
  const firm = EQUIPMENT.springs[1];
  const onlyLight = { ...EQUIPMENT, springs: EQUIPMENT.springs.slice(0, 1) };
  const takeOutFirm = (room: string) => {
    const seen = readRoom(s.db, room)?.equipment;
    must(
      changeRoom(s.app, s.people.petra, room, { equipment: { ...seen, springs: onlyLight.springs } as never, seen }),
    );
  };
  const missing = async (id: string) => (await s.findings(id)).filter((f) => f.rule === "springs-not-there");

  it("stays with the plans that use it, as it was measured: they are whole files and say what is missing", async () => {
    const { jonas } = s.people;
    const [id, bare] = [newPlan(), newPlan("Nothing on it")];
    await writeGoodClass(s, planDoc(id), [jonas, jonas]);
    const before = must(exportPlan(s.app, jonas, id));
    takeOutFirm(ROOMS.harbour);
    // The other room's firm spring is another one: this room's own, as it was, counts.
    const file = must(exportPlan(s.app, jonas, id));
    expect(file.equipment.springs).toEqual([EQUIPMENT.springs[0], { ...firm, count: 0 }]);
    expect(file.items).toEqual(before.items);
    expect((await missing(id)).map((f) => [f.level, f.message])).toContainEqual([
      "must",
      "Kneeling row: one firm planned and the machine has none. Take off one firm.",
    ]);
    expect(must(exportPlan(s.app, jonas, bare)).equipment).toEqual(onlyLight);

    const again = must(importPlan(s.app, jonas, JSON.stringify(file), ROOMS.harbour)).id;
    expect(must(exportPlan(s.app, jonas, again))).toEqual(file);

    // Back in the room it is the room's again, whatever it was.
    const stronger = { ...EQUIPMENT, springs: [...onlyLight.springs, { ...firm, stiffnessNPerMm: 0.5 }] } as never;
    must(changeRoom(s.app, s.people.petra, ROOMS.harbour, { equipment: stronger, seen: onlyLight }));
    expect(must(exportPlan(s.app, jonas, id)).equipment).toEqual(stronger);
    expect(await missing(id)).toEqual([]);
  });

  it("is known of another room, too, where a plan is taken to a room that never had it", async () => {
    const { jonas } = s.people;
    const id = newPlan();
    await writeGoodClass(s, planDoc(id), [jonas, jonas]);
    insertRoom(s.db, { id: "bare", name: "Bare room", equipment: { ...EQUIPMENT, name: "Bare", springs: [] } });
    must(changePlan(s.app, jonas, id, { roomId: "bare" }));
    expect(must(exportPlan(s.app, jonas, id)).equipment.springs).toEqual([{ ...firm, count: 0 }]);
    for (const room of [ROOMS.harbour, ROOMS.loft]) takeOutFirm(room);
    expect(must(exportPlan(s.app, jonas, id)).equipment.springs).toEqual([{ ...firm, count: 0 }]);
  });
});

describe("a plan file", () => {
  it("goes in and comes out without loss, whatever the studio has", () => {
    const { jonas } = s.people;
    const file = { ...samplePlan(), notes: "Bring towels", standards: { "missing-cue": { level: "off" as const } } };
    const id = must(importPlan(s.app, jonas, JSON.stringify(file))).id;
    expect(must(exportPlan(s.app, jonas, id))).toEqual(file);
    // From a copy of it as well.
    const copy = must(duplicatePlan(s.app, jonas, id)).id;
    expect(must(exportPlan(s.app, jonas, copy))).toEqual({ ...file, title: `${file.title} (copy)` });
    // And in another room: what came with the file stays.
    must(changePlan(s.app, jonas, id, { roomId: ROOMS.loft }));
    expect(must(exportPlan(s.app, jonas, id))).toEqual(file);
  });

  it("is refused with its place when it is wrong, and nothing is added", async () => {
    const { jonas } = s.people;
    const bad = { ...samplePlan(), lengthSeconds: 5 };
    const refused = importPlan(s.app, jonas, bad);
    expect(refused).toMatchObject({
      error: { code: "bad-plan-file", status: 422, details: { pointer: "/lengthSeconds" } },
    });
    expect(outcome(importPlan(s.app, jonas, "{"))).toBe("bad-plan-file");
    expect(outcome(importPlan(s.app, jonas, samplePlan(), "cellar"))).toBe("no-such-room");
    expect(must(await listPlans(s.app, jonas)).plans).toEqual([]);
  });

  it("is not written while it would be wrong or would lose something, and says why", async () => {
    const { jonas } = s.people;
    const id = newPlan();
    await writeGoodClass(s, planDoc(id), [jonas, jonas]);
    await s.write(planDoc(id), jonas, (w) => setItemField(w, "m1", "move", "nowhere-to-be-found"));
    const dangling = exportPlan(s.app, jonas, id);
    expect(dangling).toMatchObject({
      error: { code: "not-a-file", status: 409, details: { pointer: "/items/1/move" } },
    });
    await s.write(planDoc(id), jonas, (w) => setItemField(w, "m1", "move", "kneeling-row"));
    expect(outcome(exportPlan(s.app, jonas, id))).toBe("ok");
    await s.write(planDoc(id), jonas, (w) => {
      w.doc.getMap("items").set(
        "later",
        new Y.Map([
          ["kind", "of-a-later-version"],
          ["order", "a9"],
        ]),
      );
    });
    const unknown = exportPlan(s.app, jonas, id);
    expect(unknown).toMatchObject({ error: { code: "not-a-file" } });
    if (!unknown.ok) expect(unknown.error.message).toContain("One item is of a kind that this version");
  });
});
