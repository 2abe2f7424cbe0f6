/** Marks in a real studio: who may set and read them, that they keep their rubric, and that nothing is overwritten unseen. */
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { insertClassLog } from "#db/repos/class-log-repo.ts";
import { listRecord } from "#db/repos/record-repo.ts";
import { planRoundTable } from "#db/review-schema.ts";
import { canonicalJson } from "#lib/canonical/canonical.ts";
import type { ClassLog } from "#lib/floor/class-log-schema.ts";
import type { Rubric } from "#lib/rubric/rubric.ts";
import { STARTER_RUBRIC } from "#lib/rubric/rubric.ts";
import { readPersonOverTime } from "#server/marks/person-view.ts";
import { readPlanMarks } from "#server/marks/plan-marks.ts";
import { changeRubric, rubricNow } from "#server/marks/rubric.ts";
import { type MarksBody, setMarks } from "#server/marks/set-marks.ts";
import { createPlan } from "#server/plans/create-plan.ts";
import { handIn } from "#server/sign-off/hand-in.ts";
import { must, openStudio, outcome, type PlanStudio, ROOMS } from "#tests/support/plan-studio.ts";

let s: PlanStudio;
let id: string;
beforeEach(async () => {
  s = openStudio();
  id = must(createPlan(s.app, s.people.jonas, { title: "Row", lengthSeconds: 600, roomId: ROOMS.harbour })).id;
  must(await handIn(s.app, s.people.jonas, id));
  const round = { planId: id, number: 1, offeredBy: "jonas", offeredAt: s.app.now() };
  s.db.orm.insert(planRoundTable).values(round).onConflictDoNothing().run();
});
afterEach(() => s.stop());

const OF_ROUND: MarksBody = {
  about: { kind: "round", round: 1 },
  levels: { breath: 2, time: 4 },
  sentence: "Say the springs before the start.",
};
const mark = (who = s.people.ines, body = OF_ROUND) => setMarks(s.app, who, id, body);
const overTime = (who: PlanStudio["people"]["ines"], of = "jonas") => readPersonOverTime(s.app, who, of);

describe("marks on a round", () => {
  it("sent twice are one set, told once; after others they are new ones", () => {
    const ids = new Set(Array.from({ length: 50 }, () => must(mark()).id));
    expect(ids.size).toBe(1);
    expect(must(overTime(s.people.jonas)).markCount).toBe(1);
    expect(s.db.raw.prepare("SELECT count(*) FROM notice WHERE kind = 'marks'").pluck().get()).toBe(1);
    must(mark(s.people.ines, { ...OF_ROUND, sentence: "Wait for the last of them." }));
    must(mark());
    expect(must(overTime(s.people.jonas)).markCount).toBe(3);
    expect(must(overTime(s.people.jonas)).marks[0]?.sentence).toBe(OF_ROUND.sentence);
  });

  it("[INV-25] are shown twenty at a time, however many there are", () => {
    for (let n = 0; n < 45; n++) must(mark(s.people.ines, { ...OF_ROUND, sentence: `Sentence ${n}` }));
    const page = (from: number) => must(readPersonOverTime(s.app, s.people.jonas, "jonas", from)).marks;
    expect([0, 20, 40, 60].map((from) => page(from).length)).toEqual([20, 20, 5, 0]);
    expect(page(40).at(-1)).toMatchObject({ sentence: "Sentence 0", replaced: true });
    expect(page(0)[0]).toMatchObject({ sentence: "Sentence 44", replaced: false });
  });

  it("are read by the person, by leads and by managers; for everybody else the page does not exist", () => {
    must(mark());
    for (const who of [s.people.jonas, s.people.ines, s.people.petra])
      expect(must(overTime(who)).marks).toMatchObject([{ sentence: OF_ROUND.sentence, byName: "Ines", round: 1 }]);
    for (const who of [s.people.noor, s.people.marta, s.people.sam])
      expect(overTime(who)).toMatchObject({ ok: false, error: { status: 404 } });
    expect(overTime(s.people.ines, "nobody")).toMatchObject({ error: { status: 404 } });
  });

  it("are set by leads alone, on a round that there is, by levels that there are, and never on one's own", () => {
    expect(outcome(mark(s.people.marta))).not.toBe("ok");
    expect(outcome(mark(s.people.jonas))).not.toBe("ok");
    expect(mark(s.people.ines, { ...OF_ROUND, about: { kind: "round", round: 7 } })).toMatchObject({
      error: { status: 404 },
    });
    expect(mark(s.people.ines, { ...OF_ROUND, levels: { breath: 9 } })).toMatchObject({
      error: { code: "bad-levels" },
    });
    s.db.orm.update(planRoundTable).set({ offeredBy: "ines" }).run();
    expect(mark()).toMatchObject({ error: { code: "own-marks", status: 409 } });
    expect(must(overTime(s.people.jonas)).marks).toEqual([]);
  });

  it("set again take the place of the earlier ones, which stay on record", () => {
    must(mark());
    s.advance(1000);
    must(mark(s.people.ines, { ...OF_ROUND, levels: { breath: 3 } }));
    const { marks, series } = must(overTime(s.people.jonas));
    expect(marks.map(({ replaced }) => replaced)).toEqual([false, true]);
    expect(series.map(({ criterion, points }) => [criterion, points.map(({ level }) => level)])).toEqual([
      ["breath", [3]],
    ]);
    expect(listRecord(s.db, 0, 1000).filter(({ kind }) => kind === "marks")).toHaveLength(2);
    expect(() => s.db.raw.prepare("update marks set sentence = 'x'").run()).toThrow("only added to");
    expect(() => s.db.raw.prepare("delete from marks").run()).toThrow("only added to");
  });

  it("tell the person, and nobody else", () => {
    must(mark());
    const told = s.db.raw.prepare("select user_id, kind from notice where kind = 'marks'").all();
    expect(told).toEqual([{ user_id: "jonas", kind: "marks" }]);
  });
});

describe("marks on a class", () => {
  it("go to whom the lead names, since a log names nobody, and the class stands on that person's page", () => {
    const log = classLog(id);
    const kept = { log, roomId: "harbour", deviceId: "d", receivedAt: s.app.now() };
    insertClassLog(s.db, kept, { key: log.sessionId, logJson: canonicalJson(log) });
    const about = { kind: "class", sessionId: log.sessionId, userId: "marta" } as const;
    expect(must(readPlanMarks(s.app, s.people.ines, id)).classes).toMatchObject([
      { sessionId: log.sessionId, teacherId: null },
    ]);
    expect(mark(s.people.ines, { ...OF_ROUND, about: { ...about, userId: "ghost" } })).toMatchObject({
      error: { code: "no-such-person" },
    });
    must(mark(s.people.ines, { ...OF_ROUND, about }));
    expect(must(overTime(s.people.marta, "marta")).classes).toMatchObject([{ planned: 60, took: 66, edition: 1 }]);
    expect(must(overTime(s.people.jonas)).classes).toEqual([]);
  });
});

describe("the rubric", () => {
  const shorter: Rubric = { criteria: STARTER_RUBRIC.criteria.slice(0, 2) };

  it("is changed by leads and managers, never over somebody else's change", () => {
    expect(outcome(changeRubric(s.app, s.people.marta, { rubric: shorter, seen: STARTER_RUBRIC }))).not.toBe("ok");
    must(changeRubric(s.app, s.people.petra, { rubric: shorter, seen: STARTER_RUBRIC }));
    expect(changeRubric(s.app, s.people.ines, { rubric: STARTER_RUBRIC, seen: STARTER_RUBRIC })).toMatchObject({
      error: { code: "changed-meanwhile", status: 409 },
    });
    expect(rubricNow(s.app)).toEqual(shorter);
  });

  it("changed later, leaves what earlier marks said", () => {
    must(mark());
    must(changeRubric(s.app, s.people.ines, { rubric: shorter, seen: STARTER_RUBRIC }));
    const [marks] = must(overTime(s.people.jonas)).marks;
    expect(marks?.rubric).toEqual(STARTER_RUBRIC);
    expect(mark(s.people.ines, { ...OF_ROUND, levels: { time: 4 } })).toMatchObject({ error: { code: "bad-levels" } });
  });
});

function classLog(planId: string): ClassLog {
  return {
    format: "springline.class-log/1",
    sessionId: "0123456789abcdef0",
    kind: "class",
    edition: { planId, number: 1, hash: "0".repeat(64) },
    startedAt: new Date(s.app.now()).toISOString(),
    elapsed: 66,
    whole: true,
    rows: [{ phase: "work", item: "m1", planned: 60, given: 60, took: 66, held: 0 }],
  };
}
