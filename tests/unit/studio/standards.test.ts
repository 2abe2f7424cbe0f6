/** Studio standards through the commands: who may, what is kept, what hears of it, and what never changes. */

import { afterEach, beforeEach, describe, expect, test } from "vitest";
import { isAsKept, readStandardDraft, standardDraftOf } from "#app/rules/standard-draft.ts";
import { listRecord } from "#db/repos/record-repo.ts";
import { lastStudioEvent } from "#db/repos/studio-event-repo.ts";
import { readStudio, writeStandards } from "#db/repos/studio-repo.ts";
import { setItemField } from "#lib/doc/write.ts";
import { STANDARD_FORMATS } from "#lib/formats/formats.ts";
import { RULES } from "#lib/rules/registry.ts";
import { planDoc } from "#server/context/live-documents.ts";
import { editionFile } from "#server/editions/editions.ts";
import { readMonthSettings } from "#server/month-facts/month-settings.ts";
import { createPlan } from "#server/plans/create-plan.ts";
import { importPlan } from "#server/plans/import-plan.ts";
import { sharePlan } from "#server/plans/share-plan.ts";
import { changeMonthSettings } from "#server/programme/change-month-settings.ts";
import { handIn } from "#server/sign-off/hand-in.ts";
import { readForSignOff } from "#server/sign-off/read-for-sign-off.ts";
import { signPlan } from "#server/sign-off/sign-plan.ts";
import { changeStandard, readStandard } from "#server/studio/change-standard.ts";
import { tryStandard } from "#server/studio/try-standard.ts";
import { studioContext } from "#server/studio-data/studio-context.ts";
import { writeGoodClass } from "#tests/support/good-class.ts";
import { must, openStudio, outcome, type PlanStudio, ROOMS, type Who } from "#tests/support/plan-studio.ts";

let s: PlanStudio;
beforeEach(() => {
  s = openStudio();
});
afterEach(() => s.stop());

const RULE = "too-short-or-long";
const petra = () => s.people.petra;
const stored = () => readStudio(s.db)?.standards;

async function goodPlan(team = false): Promise<string> {
  const { jonas, marta } = s.people;
  const { id } = must(
    createPlan(s.app, team ? marta : jonas, { title: "Pull", lengthSeconds: 600, roomId: ROOMS.harbour, team }),
  );
  if (!team) must(sharePlan(s.app, jonas, id, { userId: marta.id, on: true }));
  await writeGoodClass(s, planDoc(id), team ? [marta, s.people.ines] : [jonas, marta]);
  return id;
}

describe("who may", () => {
  test.each(["ines", "marta", "jonas", "noor", "sam"] as const)("%s changes no standard", (who: Who) => {
    const actor = s.people[who];
    expect(outcome(changeStandard(s.app, actor, RULE, { level: "off" }))).toBe("no-right");
    expect(outcome(changeStandard(s.app, actor, RULE, null))).toBe("no-right");
    expect(outcome(tryStandard(s.app, actor, RULE, { level: "off" }))).toBe("no-right");
    expect(stored()).toEqual({});
  });

  test("nobody and a device change none; crew may not read them", () => {
    expect(outcome(changeStandard(s.app, null, RULE, { level: "off" }))).toBe("no-right");
    const device = { kind: "device", id: "d", roomId: ROOMS.loft } as const;
    expect(outcome(changeStandard(s.app, device, RULE, { level: "off" }))).toBe("no-right");
    expect(outcome(readStandard(s.app, s.people.sam, RULE))).toBe("no-right");
    expect(outcome(readStandard(s.app, s.people.jonas, RULE))).toBe("ok");
  });
});

describe("what is kept", () => {
  test("level and limits that differ, sorted by rule; as the rule has it leaves nothing", () => {
    must(changeStandard(s.app, petra(), RULE, { level: "must", limits: { maxSeconds: 90, minSeconds: 30 } }));
    must(changeStandard(s.app, petra(), "missing-cue", { limits: { requiredKinds: ["setup"] } }));
    expect(stored()).toEqual({
      "missing-cue": { limits: { requiredKinds: ["setup"] } },
      [RULE]: { level: "must", limits: { maxSeconds: 90 } },
    });
    expect(Object.keys(stored() ?? {})).toEqual(["missing-cue", RULE]);
    must(changeStandard(s.app, petra(), RULE, { limits: { maxSeconds: 120 } }));
    must(changeStandard(s.app, petra(), "missing-cue", null));
    expect(stored()).toEqual({});
    expect(studioContext(s.db, ROOMS.loft).standards).toEqual({});
  });

  test("a standard of a rule that has no file here stays where it is", () => {
    writeStandards(s.db, { "silent-stretch-of-old": { level: "off" } });
    must(changeStandard(s.app, petra(), RULE, { level: "info" }));
    expect(Object.keys(stored() ?? {})).toEqual(["silent-stretch-of-old", RULE]);
  });

  test("who changed it last, and when; the record is only added to", () => {
    expect(must(readStandard(s.app, petra(), RULE))).toEqual({ standard: null, changed: null });
    s.advance(5000);
    must(changeStandard(s.app, petra(), RULE, { level: "info" }));
    const at = s.app.now();
    expect(must(readStandard(s.app, s.people.jonas, RULE)).changed).toEqual({ byName: "Petra", at });
    s.advance(5000);
    must(changeStandard(s.app, petra(), RULE, { level: "info" }));
    expect(lastStudioEvent(s.db, "standard", RULE)).toMatchObject({ at, data: { level: "info" } });
    must(changeStandard(s.app, petra(), RULE, null));
    expect(lastStudioEvent(s.db, "standard", RULE)).toMatchObject({ at: at + 5000, data: null });
    expect(() => s.db.raw.prepare("DELETE FROM studio_event").run()).toThrow(/only added to/);
    expect(() => s.db.raw.prepare("UPDATE studio_event SET at = 1").run()).toThrow(/only added to/);
  });

  test("what somebody else kept meanwhile is not taken back unseen", () => {
    const first = { level: "info" as const };
    must(changeStandard(s.app, petra(), RULE, first, null));
    expect(outcome(changeStandard(s.app, petra(), RULE, { level: "off" }, null))).toBe("changed-meanwhile");
    expect(outcome(changeStandard(s.app, petra(), RULE, null, { level: "must" }))).toBe("changed-meanwhile");
    expect(stored()).toEqual({ [RULE]: first });
    // The same wish twice is no loss to anybody, and from what stands there now it is taken.
    expect(outcome(changeStandard(s.app, petra(), RULE, first, null))).toBe("ok");
    must(changeStandard(s.app, petra(), RULE, { level: "off" }, first));
    must(changeStandard(s.app, petra(), RULE, null, { level: "off" }));
    expect(stored()).toEqual({});
  });

  test("saved again without a change, a rule of plans and one of months write no row of the record", () => {
    must(changeStandard(s.app, petra(), RULE, { limits: { maxSeconds: 90 } }));
    const seen = must(readMonthSettings(s.app, petra()));
    const rows = listRecord(s.db, 0, 1000).length;
    must(changeStandard(s.app, petra(), RULE, { limits: { maxSeconds: 90 } }));
    expect(must(changeMonthSettings(s.app, petra(), { settings: seen, seen }))).toEqual(seen);
    expect(listRecord(s.db, 0, 1000)).toHaveLength(rows);
    must(changeMonthSettings(s.app, petra(), { settings: { ...seen, limits: { gapMinutes: 20 } }, seen }));
    expect(listRecord(s.db, 0, 1000)).toHaveLength(rows + 1);
  });

  test("a form left as it was shown is known to be as kept, for every rule, with usual limits typed out or not", () => {
    for (const rule of RULES) {
      const shown = readStandardDraft(rule, standardDraftOf(rule, null, STANDARD_FORMATS), null).standard;
      expect(shown && isAsKept(rule, shown, null), rule.id).toBe(true);
      expect(isAsKept(rule, { ...shown, level: "off" }, null), rule.id).toBe(false);
    }
  });

  test("a limit the rule does not have or cannot take is refused with its name and bounds; nothing is kept", () => {
    const say = (limits: Record<string, unknown>) => {
      const result = changeStandard(s.app, petra(), RULE, { limits });
      return result.ok ? "ok" : `${result.error.status} ${result.error.message}`;
    };
    expect(say({ maxSeconds: 0 })).toBe("422 The limit maxSeconds should be a number from 1 to 14400.");
    expect(say({ maxSeconds: "90" })).toBe("422 The limit maxSeconds should be a number from 1 to 14400.");
    expect(say({ most: 90 })).toMatch(/^422 The limit most should be a limit of this rule: minSeconds, maxSeconds/);
    expect(say({ constructor: 90 })).toMatch(/^422 /);
    expect(outcome(changeStandard(s.app, petra(), "no-such-rule", {}))).toBe("not-found");
    expect(outcome(changeStandard(s.app, petra(), "constructor", { level: "off" }))).toBe("not-found");
    expect(stored()).toEqual({});
  });
});

describe("what hears of it", () => {
  test("every open plan is told and checked afresh; the same standard again tells nobody", async () => {
    const id = await goodPlan();
    s.announced.length = 0;
    must(changeStandard(s.app, petra(), RULE, { level: "must", limits: { maxSeconds: 90 } }));
    await s.app.checks.idle();
    expect(s.announced.filter((a) => a.name === `plan/${id}`).map((a) => a.news.t)).toEqual(["studio", "checked"]);
    const found = (await s.findings(id)).filter((f) => f.rule === RULE);
    expect(found.map((f) => f.level)).toEqual(["must", "must", "must", "must"]);
    s.announced.length = 0;
    must(changeStandard(s.app, petra(), RULE, { level: "must", limits: { maxSeconds: 90 } }));
    expect(s.announced).toEqual([]);
  });

  test("a signed edition stays to the byte, and what is signed next has the new standards inside", async () => {
    const { jonas, ines } = s.people;
    const id = await goodPlan();
    must(await handIn(s.app, jonas, id));
    must(await signPlan(s.app, ines, id, { hash: must(await readForSignOff(s.app, ines, id)).hash }));
    const which = { planId: id, number: 1, form: "plan" } as const;
    const before = must(editionFile(s.app, ines, which));
    must(changeStandard(s.app, petra(), RULE, { level: "must", limits: { maxSeconds: 90 } }));
    expect(must(editionFile(s.app, ines, which))).toEqual(before);
    expect(before.text).not.toContain(RULE);
    const reading = must(await readForSignOff(s.app, ines, id));
    expect(reading.blockers.map((b) => b.code)).toContain("must-fix");
    expect(reading.plan.standards).toEqual({ [RULE]: { level: "must", limits: { maxSeconds: 90 } } });
  });
});

describe("what it would change", () => {
  test("findings of the team's plans before and after, and nothing is kept", async () => {
    const id = await goodPlan(true);
    await goodPlan(false);
    expect(must(tryStandard(s.app, petra(), RULE, { level: "look", limits: { maxSeconds: 110 } }))).toEqual({
      plans: 1,
      before: { must: 0, look: 0, info: 0 },
      after: { must: 0, look: 1, info: 0 },
    });
    await s.write(planDoc(id), s.people.marta, (w) => setItemField(w, "m1", "seconds", 130));
    const off = must(tryStandard(s.app, petra(), RULE, { level: "off" }));
    expect([off.before, off.after]).toEqual([
      { must: 0, look: 1, info: 0 },
      { must: 0, look: 0, info: 0 },
    ]);
    expect(stored()).toEqual({});
  });

  test("a plan whose file brought standards is held to the studio's like any other", async () => {
    const id = await goodPlan(true);
    const { plan } = must(await readForSignOff(s.app, s.people.ines, id));
    const made = must(importPlan(s.app, s.people.marta, { ...plan, standards: { [RULE]: { level: "info" } } }));
    s.db.raw.prepare("UPDATE plan SET team = 1 WHERE id = ?").run(made.id);
    expect(must(tryStandard(s.app, petra(), RULE, { level: "off" })).plans).toBe(2);
  });
});
