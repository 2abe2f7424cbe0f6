/** Accepting a *look again*: by leads only, with a reason, and only what the server itself finds with these values. */
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { readAcceptance } from "#db/repos/acceptance-repo.ts";
import { listRecord } from "#db/repos/record-repo.ts";
import { setItemField } from "#lib/doc/write.ts";
import type { Finding } from "#lib/rules/define/types.ts";
import { acceptFinding, acceptSchema, endAcceptedFinding, listPlanAcceptances } from "#server/acceptances/accept.ts";
import { acceptedOf } from "#server/acceptances/accepted-of.ts";
import { planDoc } from "#server/context/live-documents.ts";
import { createPlan } from "#server/plans/create-plan.ts";
import { sharePlan } from "#server/plans/share-plan.ts";
import { handIn } from "#server/sign-off/hand-in.ts";
import { readForSignOff } from "#server/sign-off/read-for-sign-off.ts";
import { signPlan } from "#server/sign-off/sign-plan.ts";
import { writeGoodClass } from "#tests/support/good-class.ts";
import { must, openStudio, outcome, type PlanStudio, ROOMS } from "#tests/support/plan-studio.ts";

const REASON = "They know this change well.";
let s: PlanStudio;
let id = "";
beforeEach(async () => {
  s = openStudio();
  const { jonas, marta } = s.people;
  id = must(createPlan(s.app, jonas, { title: "Pull and press", lengthSeconds: 600, roomId: ROOMS.harbour })).id;
  must(sharePlan(s.app, jonas, id, { userId: marta.id, on: true }));
  await writeGoodClass(s, planDoc(id), [jonas, marta]);
});
afterEach(() => s.stop());

async function lookAgain(): Promise<Finding> {
  const found = (await s.findings(id)).find(({ level }) => level === "look");
  if (!found) throw new Error("the class has something to look at again");
  return found;
}
const asked = ({ rule, key = "", items, message, values }: Finding) => ({
  rule,
  key,
  items: [...items],
  message,
  values,
});
const accept = (finding: Finding, who = s.people.ines, reason = REASON) =>
  acceptFinding(s.app, who, id, { finding: asked(finding), reason });
const recorded = () => listRecord(s.db, 0, 100).filter(({ subject }) => subject === `plan/${id}`);

describe("[INV-28] accepting a look again", () => {
  it("is told to all pages, recorded, and found again by the same values", async () => {
    const finding = await lookAgain();
    const { id: made } = must(await accept(finding));
    const { accepted } = must(listPlanAcceptances(s.app, s.people.jonas, id));
    expect(accepted).toMatchObject([
      { id: made, rule: finding.rule, message: finding.message, reason: REASON, byName: "Ines" },
    ]);
    expect(s.last(planDoc(id), "accepted")?.accepted).toEqual(accepted);
    expect(acceptedOf(s.app, id, await s.findings(id))).toEqual(accepted);
    expect(recorded().at(-1)).toMatchObject({ actorId: "ines", kind: "finding-accepted" });
    expect(JSON.parse(recorded().at(-1)?.bodyJson ?? "")).toMatchObject({ id: made, reason: REASON });
  });

  it("is a lead's alone", async () => {
    const finding = await lookAgain();
    expect(outcome(await accept(finding, s.people.jonas))).toBe("no-right");
    for (const who of [s.people.petra, s.people.sam, s.people.noor])
      expect(outcome(await accept(finding, who))).toBe("not-found");
    const made = must(await accept(finding)).id;
    expect(outcome(endAcceptedFinding(s.app, s.people.jonas, made))).toBe("no-right");
    expect(outcome(endAcceptedFinding(s.app, s.people.sam, made))).toBe("not-found");
    expect(outcome(endAcceptedFinding(s.app, s.people.ines, "nothing"))).toBe("not-found");
  });

  it("needs a reason of at least three words", async () => {
    const finding = asked(await lookAgain());
    const takes = (reason: string) => acceptSchema.safeParse({ finding, reason }).success;
    for (const reason of ["", "fine", "It is", "- - -", "x".repeat(1001)]) expect(takes(reason), reason).toBe(false);
    for (const reason of ["It is fine", "Don’t worry: known."]) expect(takes(reason), reason).toBe(true);
  });

  it("is refused for values that are not those of now, with what is found now", async () => {
    const finding = await lookAgain();
    const other = await acceptFinding(s.app, s.people.ines, id, {
      finding: { ...asked(finding), values: { ...finding.values, more: 1 } },
      reason: REASON,
    });
    expect(other).toMatchObject({ ok: false, error: { code: "finding-changed", details: { finding } } });
    expect(outcome(await accept({ ...finding, message: "All is well." }))).toBe("finding-changed");
    expect(outcome(await accept({ ...finding, key: `${finding.rule}:made-up:m1` }))).toBe("finding-changed");
    expect(must(listPlanAcceptances(s.app, s.people.ines, id)).accepted).toEqual([]);
  });

  it("is never for what must be fixed, whatever level the page claims", async () => {
    await s.write(planDoc(id), s.people.jonas, (w) => setItemField(w, "m1", "seconds", 700));
    const must_ = (await s.findings(id)).find(({ level }) => level === "must");
    if (!must_) throw new Error("the class is too long");
    expect(outcome(await accept({ ...must_, level: "look" }))).toBe("not-look-again");
  });

  it("is done once: of two in the same second the second is told who was first", async () => {
    const finding = await lookAgain();
    const both = await Promise.all([accept(finding), accept(finding, s.people.ines, "Seen and fine by me.")]);
    expect(both.map(outcome).toSorted()).toEqual(["already-accepted", "ok"]);
    expect(must(listPlanAcceptances(s.app, s.people.ines, id)).accepted).toHaveLength(1);
  });

  it("can be ended by a lead, once, and then be done again", async () => {
    const finding = await lookAgain();
    const made = must(await accept(finding)).id;
    must(endAcceptedFinding(s.app, s.people.ines, made));
    expect(outcome(endAcceptedFinding(s.app, s.people.ines, made))).toBe("already-ended");
    expect(readAcceptance(s.db, made)).toMatchObject({ endedBy: "ines" });
    expect(s.last(planDoc(id), "accepted")?.accepted).toEqual([]);
    expect(recorded().at(-1)?.kind).toBe("acceptance-ended");
    must(await accept(finding));
  });

  it("stands in the edition when it matches at signing, and not when it does not", async () => {
    const finding = await lookAgain();
    must(await accept(finding));
    const others = (await s.findings(id)).filter((one) => one.level === "look" && one.key !== finding.key);
    must(await handIn(s.app, s.people.jonas, id));
    const { hash } = must(await readForSignOff(s.app, s.people.ines, id));
    must(await signPlan(s.app, s.people.ines, id, { hash }));
    const row = s.db.raw
      .prepare("select accepted_json as kept, card_json as card from edition where plan_id = ?")
      .get(id) as {
      kept: string;
      card: string;
    };
    expect(JSON.parse(row.kept)).toMatchObject([{ message: finding.message, reason: REASON, byName: "Ines" }]);
    expect(row.card).not.toContain(REASON);
    expect(acceptedOf(s.app, id, others)).toEqual([]);
  });
});
