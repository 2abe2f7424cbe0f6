/** Rounds of reading on a real database: what each step keeps, who reads, and that nothing of an earlier round is lost. */
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { readEdition } from "#db/repos/edition-repo.ts";
import { listMoments } from "#db/repos/moment-repo.ts";
import { setPlanState } from "#db/repos/plan-repo.ts";
import { listRecord } from "#db/repos/record-repo.ts";
import { listRounds } from "#db/repos/round-repo.ts";
import { writeStandards } from "#db/repos/studio-repo.ts";
import { contentHash } from "#lib/canonical/canonical.ts";
import { setItemField } from "#lib/doc/write.ts";
import type { Plan } from "#lib/plan/schema.ts";
import type { Person } from "#lib/policy/can.ts";
import type { DocName } from "#lib/protocol/messages.ts";
import { planDoc } from "#server/context/live-documents.ts";
import { createPlan } from "#server/plans/create-plan.ts";
import { sharePlan } from "#server/plans/share-plan.ts";
import { markPlatesRead } from "#server/rounds/plates-read.ts";
import { readPoint, readRounds } from "#server/rounds/read-rounds.ts";
import { takeUp } from "#server/rounds/take-up.ts";
import { handBack } from "#server/sign-off/hand-back.ts";
import { handIn, takeBack } from "#server/sign-off/hand-in.ts";
import { readForSignOff } from "#server/sign-off/read-for-sign-off.ts";
import { signPlan } from "#server/sign-off/sign-plan.ts";
import { withdrawEdition } from "#server/sign-off/withdraw-edition.ts";
import { openThread } from "#server/threads/threads.ts";
import { writeGoodClass } from "#tests/support/good-class.ts";
import { must, openStudio, outcome, type PlanStudio, ROOMS } from "#tests/support/plan-studio.ts";

let s: PlanStudio;
beforeEach(() => {
  s = openStudio();
});
afterEach(() => s.stop());

const OTHER_LEAD: Person = { kind: "person", id: "petra", roles: ["lead"] };

async function writtenPlan(): Promise<{ id: string; doc: DocName }> {
  const { jonas, marta } = s.people;
  const { id } = must(createPlan(s.app, jonas, { title: "Pull and press", lengthSeconds: 600, roomId: ROOMS.harbour }));
  must(sharePlan(s.app, jonas, id, { userId: marta.id, on: true }));
  await writeGoodClass(s, planDoc(id), [jonas, marta]);
  return { id, doc: planDoc(id) };
}
const rounds = (id: string, who: Person = s.people.ines) => must(readRounds(s.app, who, id));
const planAt = (id: string, point: string | null | undefined, who: Person = s.people.ines) =>
  must(readPoint(s.app, who, id, point ?? "none")).plan as Plan;
const secondsOf = (plan: Plan, item: string) => plan.items.find((i) => i.id === item && i.kind === "move");
const lasting = (doc: DocName, seconds: number) =>
  s.write(doc, s.people.jonas, (w) => setItemField(w, "m1", "seconds", seconds));
const state = (id: string) => s.last(planDoc(id), "state")?.state;

describe("[INV-27] a round of reading", () => {
  it("keeps text, findings, threads and note of every step, through two rounds, a sign-off and a withdrawal", async () => {
    const { ines, jonas } = s.people;
    const { id, doc } = await writtenPlan();
    must(await handIn(s.app, jonas, id, "My first"));
    must(openThread(s.app, ines, id, { anchor: { kind: "plan" }, body: "Slower" }));
    s.advance(60_000);
    must(await handBack(s.app, ines, id, { note: "Nearly", mainPoints: ["Slower", "One voice"] }));
    await lasting(doc, 105);
    s.advance(60_000);
    must(await handIn(s.app, jonas, id));
    const told = rounds(id);
    expect(told.rounds.map(({ number, outcome: end, mainPoints }) => [number, end, mainPoints])).toEqual([
      [1, "returned", ["Slower", "One voice"]],
      [2, null, []],
    ]);
    const [offered, returned, again] = told.rounds.flatMap((round) => round.moments);
    expect([offered, returned, again].map((m) => [m?.kind, m?.note, m?.threads, m?.openThreads])).toEqual([
      ["offered", "My first", 0, 0],
      ["returned", "Nearly", 1, 1],
      ["offered", null, 1, 1],
    ]);
    expect(secondsOf(planAt(id, String(returned?.id)), "m1")).toMatchObject({ seconds: 100 });
    expect(secondsOf(planAt(id, String(again?.id)), "m1")).toMatchObject({ seconds: 105 });
    expect(contentHash(planAt(id, String(again?.id)))).toBe(listMoments(s.db, id)[2]?.hash);
  });

  it("numbers its edition, and a withdrawal belongs to the round that it came from", async () => {
    const { ines, jonas } = s.people;
    const { id } = await writtenPlan();
    must(await handIn(s.app, jonas, id));
    must(await handBack(s.app, ines, id, { note: "Again" }));
    must(await handIn(s.app, jonas, id));
    const { hash } = must(await readForSignOff(s.app, ines, id));
    must(await signPlan(s.app, ines, id, { hash }));
    expect(readEdition(s.db, id, 1)).toMatchObject({ round: 2 });
    must(withdrawEdition(s.app, ines, { planId: id, number: 1 }, "A spring is worn"));
    const last = rounds(id).rounds[1];
    expect(last).toMatchObject({ outcome: "signed", edition: 1 });
    expect(last?.moments.map(({ kind }) => kind)).toEqual(["offered", "signed", "withdrawn"]);
    expect(contentHash(planAt(id, String(last?.moments[2]?.id)))).toBe(hash);
    expect(state(id)).toMatchObject({
      state: "handed-back",
      note: "A spring is worn",
      round: { number: 2, mainPoints: [] },
    });
  });

  it("ends when it is taken back, and the next one has the next number", async () => {
    const { jonas } = s.people;
    const { id } = await writtenPlan();
    must(await handIn(s.app, jonas, id));
    must(await takeBack(s.app, jonas, id));
    must(await handIn(s.app, jonas, id));
    expect(rounds(id).rounds.map(({ outcome: end }) => end)).toEqual(["taken-back", null]);
  });

  it("shows the main points with the return until the plan is offered again", async () => {
    const { ines, jonas } = s.people;
    const { id } = await writtenPlan();
    must(await handIn(s.app, jonas, id));
    must(await handBack(s.app, ines, id, { note: "Nearly", mainPoints: ["Slower"] }));
    expect(state(id)).toMatchObject({ note: "Nearly", round: { number: 1, mainPoints: ["Slower"] } });
    must(await handIn(s.app, jonas, id));
    expect(state(id)).toMatchObject({ note: null, round: { number: 2, mainPoints: [] } });
    expect(rounds(id).rounds[0]).toMatchObject({ mainPoints: ["Slower"], moments: [{}, { note: "Nearly" }] });
  });

  it("is given to a plan that was offered before rounds were kept, when it is next touched", async () => {
    const { ines, jonas } = s.people;
    const { id } = await writtenPlan();
    setPlanState(s.db, id, { state: "handed-in", note: "Old", handedInBy: jonas.id, handedInAt: 1000 });
    expect(rounds(id).rounds).toMatchObject([
      { number: 1, offeredById: "jonas", offeredAt: 1000, outcome: null, moments: [] },
    ]);
    expect(listRounds(s.db, id)).toEqual([]);
    must(await handBack(s.app, ines, id, { note: "Slower" }));
    expect(rounds(id).rounds).toMatchObject([
      { number: 1, offeredAt: 1000, outcome: "returned", moments: [{ note: "Slower" }] },
    ]);
  });

  it("keeps a plan that is no whole plan file as the server reads it", async () => {
    const { jonas } = s.people;
    const { id, doc } = await writtenPlan();
    writeStandards(s.db, { "unknown-move-data": { level: "off" } });
    await s.write(doc, jonas, (w) => setItemField(w, "m1", "move", "nobody"));
    must(await handIn(s.app, jonas, id));
    const moment = rounds(id).rounds[0]?.moments[0];
    expect(moment?.hasText).toBe(true);
    expect(secondsOf(planAt(id, String(moment?.id)), "m1")).toMatchObject({ move: "nobody" });
  });

  it("is never changed afterwards: the database itself refuses it", async () => {
    const { jonas } = s.people;
    const { id } = await writtenPlan();
    must(await handIn(s.app, jonas, id));
    for (const sql of [
      "update plan_moment set note = 'x'",
      "delete from plan_moment",
      "update plan_text set plan_json = '{}'",
      "delete from plan_text",
      "insert or replace into plan_text select plan_id, hash, '{}' from plan_text",
    ])
      expect(() => s.db.raw.prepare(sql).run()).toThrow(/never|only added to/);
  });
});

describe("a lead who reads", () => {
  it("takes the round up, is named to the others, lets it go, and is followed by one who takes it over knowingly", async () => {
    const { ines, jonas } = s.people;
    const { id } = await writtenPlan();
    expect(outcome(takeUp(s.app, ines, id, { on: true }))).toBe("not-offered");
    must(await handIn(s.app, jonas, id));
    expect(outcome(takeUp(s.app, jonas, id, { on: true }))).toBe("no-right");
    must(takeUp(s.app, ines, id, { on: true }));
    expect(state(id)?.round).toMatchObject({ reader: { id: "ines", name: "Ines" }, since: s.app.now() });
    const refused = takeUp(s.app, OTHER_LEAD, id, { on: true });
    expect(refused).toMatchObject({ error: { code: "being-read", status: 409, details: { readerId: "ines" } } });
    if (!refused.ok) expect(refused.error.message).toContain("Ines is already reading");
    expect(outcome(takeUp(s.app, OTHER_LEAD, id, { on: false }))).toBe("not-reader");
    expect(outcome(takeUp(s.app, OTHER_LEAD, id, { on: true, from: "marta" }))).toBe("being-read");
    must(takeUp(s.app, OTHER_LEAD, id, { on: true, from: "ines" }));
    expect(outcome(takeUp(s.app, ines, id, { on: true }))).toBe("being-read");
    must(takeUp(s.app, OTHER_LEAD, id, { on: false }));
    expect(outcome(takeUp(s.app, ines, id, { on: true, from: "petra" }))).toBe("let-go");
    must(takeUp(s.app, ines, id, { on: true }));
    must(await handBack(s.app, ines, id, { note: "Nearly" }));
    expect(state(id)?.round).toMatchObject({ reader: null });
    expect(rounds(id).rounds[0]).toMatchObject({ readerId: "ines", readerName: "Ines" });
    const kinds = listRecord(s.db, 0, 100).map(({ kind }) => kind);
    expect(kinds.filter((kind) => kind.startsWith("reading-"))).toEqual([
      ...["reading-taken-up", "reading-taken-up", "reading-let-go", "reading-taken-up"],
    ]);
  });

  it("keeps what they have read, plate by plate, for themselves", async () => {
    const { ines, jonas } = s.people;
    const { id } = await writtenPlan();
    const plates = [{ itemId: "m1", hash: "a".repeat(64) }];
    expect(outcome(markPlatesRead(s.app, jonas, id, { on: true, plates }))).toBe("no-right");
    must(markPlatesRead(s.app, ines, id, { on: true, plates }));
    expect(rounds(id).platesRead).toEqual({ m1: "a".repeat(64) });
    expect(rounds(id, OTHER_LEAD).platesRead).toEqual({});
    must(markPlatesRead(s.app, ines, id, { on: true, plates: [{ itemId: "m1", hash: "b".repeat(64) }] }));
    must(markPlatesRead(s.app, ines, id, { on: false, plates })); // of a text that is not there any more
    expect(rounds(id).platesRead).toEqual({ m1: "b".repeat(64) });
  });
});

describe("a step that was written in another round", () => {
  it("[INV-27] neither returns nor signs, and is told who ended its round, when, and what to do", async () => {
    const { ines, jonas } = s.people;
    const { id } = await writtenPlan();
    must(await handIn(s.app, jonas, id));
    s.advance(60_000);
    const takenAt = s.app.now();
    must(await takeBack(s.app, jonas, id));
    const meanwhile = await handBack(s.app, ines, id, { note: "Slower", round: 1 });
    expect(meanwhile).toMatchObject({ error: { code: "other-round", status: 409, details: { round: null } } });
    if (!meanwhile.ok)
      expect(meanwhile.error.message).toMatch(/^Jonas took the plan back in round 1.*offered again\.$/);
    must(await handIn(s.app, jonas, id));
    const { hash } = must(await readForSignOff(s.app, ines, id));
    for (const refused of [
      await handBack(s.app, ines, id, { note: "Slower", round: 1 }),
      await signPlan(s.app, ines, id, { hash, round: 1 }),
    ]) {
      const details = { round: 2, endedByName: "Jonas", endedAt: takenAt, outcome: "taken-back" };
      expect(refused).toMatchObject({ error: { code: "other-round", status: 409, details } });
      if (!refused.ok) expect(refused.error.message).toContain("offered again as round 2");
    }
    expect(listRounds(s.db, id).map(({ outcome: end }) => end)).toEqual(["taken-back", null]);
    must(await handBack(s.app, ines, id, { note: "Slower", round: 2 }));
    expect(state(id)?.round?.ended).toEqual({
      ...{ outcome: "returned", byId: "ines", byName: "Ines", at: s.app.now() },
    });
  });

  it("goes through without a round, from a program that sends none", async () => {
    const { ines, jonas } = s.people;
    const { id } = await writtenPlan();
    must(await handIn(s.app, jonas, id));
    must(await handBack(s.app, ines, id, { note: "Slower" }));
  });

  it("is known to the pages: who took it back, and when", async () => {
    const { jonas } = s.people;
    const { id } = await writtenPlan();
    must(await handIn(s.app, jonas, id));
    expect(state(id)?.round?.ended).toBeNull();
    must(await takeBack(s.app, jonas, id));
    expect(state(id)?.round?.ended).toMatchObject({ outcome: "taken-back", byName: "Jonas", at: s.app.now() });
  });
});

describe("what has changed", () => {
  it("is told since the lead returned it, however often they open the review", async () => {
    const { ines, jonas } = s.people;
    const { id, doc } = await writtenPlan();
    must(await handIn(s.app, jonas, id));
    must(await handBack(s.app, ines, id, { note: "Longer" })); // without opening the review
    s.advance(1000);
    await lasting(doc, 105);
    must(await handIn(s.app, jonas, id));
    for (let times = 0; times < 3; times++) {
      const seen = must(await readForSignOff(s.app, ines, id));
      expect(seen.changedSince).toEqual(["Kneeling row: 100 s became 105 s."]);
      expect(seen.since).toMatchObject({ kind: "returned", byId: "ines" });
    }
    await lasting(doc, 110);
    expect(must(await readForSignOff(s.app, ines, id)).changedSince).toEqual(["Kneeling row: 100 s became 110 s."]);
  });

  it("is told since the first reading of a first round, after many openings", async () => {
    const { ines, jonas } = s.people;
    const { id, doc } = await writtenPlan();
    must(await handIn(s.app, jonas, id));
    expect(must(await readForSignOff(s.app, ines, id)).changedSince).toBeUndefined();
    for (let seconds = 101; seconds < 115; seconds++) {
      await lasting(doc, seconds);
      s.advance(1000);
      const { changedSince } = must(await readForSignOff(s.app, ines, id));
      expect(changedSince).toEqual([`Kneeling row: 100 s became ${seconds} s.`]);
    }
  });

  it("begins for each person with what matters to them", async () => {
    const { ines, jonas } = s.people;
    const { id } = await writtenPlan();
    expect(rounds(id).usual).toBeNull();
    must(await handIn(s.app, jonas, id));
    expect(rounds(id).usual).toBeNull();
    s.advance(1000);
    must(await handBack(s.app, ines, id, { note: "Longer" }));
    const returned = String(listMoments(s.db, id)[1]?.id);
    expect([rounds(id).usual, rounds(id, jonas).usual, rounds(id, OTHER_LEAD).usual]).toEqual([
      returned,
      returned,
      returned,
    ]);
    s.advance(1000);
    must(await handIn(s.app, jonas, id));
    const { hash } = must(await readForSignOff(s.app, OTHER_LEAD, id));
    expect(rounds(id, OTHER_LEAD).usual).toBe(returned); // reading within the round changes nothing
    expect(contentHash(planAt(id, "reading", OTHER_LEAD))).toBe(hash);
    must(await signPlan(s.app, ines, id, { hash: must(await readForSignOff(s.app, ines, id)).hash }));
    expect(rounds(id, jonas).usual).toBeNull();
  });
});

describe("signing with findings left open", () => {
  it("is refused when others are open than the lead said, and written in the record when it goes through", async () => {
    const { ines, jonas } = s.people;
    const { id } = await writtenPlan();
    must(await handIn(s.app, jonas, id));
    const { hash, lookAgain, findings } = must(await readForSignOff(s.app, ines, id));
    expect(lookAgain).toEqual(findings.filter(({ level }) => level === "look"));
    expect(lookAgain.length).toBeGreaterThan(0);
    const more = lookAgain.length + 1;
    expect(outcome(await signPlan(s.app, ines, id, { hash, leftOpen: more }))).toBe("left-open-changed");
    must(await signPlan(s.app, ines, id, { hash, leftOpen: lookAgain.length }));
    const row = listRecord(s.db, 0, 100).find(({ kind }) => kind === "signed-with-open");
    expect(JSON.parse(row?.bodyJson ?? "{}")).toMatchObject({
      edition: 1,
      findings: lookAgain.map(({ message }) => ({ message })),
    });
  });
});
