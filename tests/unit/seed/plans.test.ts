/** The demo plans: the good ones are good by the rules, and each mistake of the trainee's is found by its rule. */
import { describe, expect, it } from "vitest";
import { checkPlan } from "#lib/analysis/check-plan.ts";
import { classClock } from "#lib/clock/clock.ts";
import { parsePlan } from "#lib/plan-file/parse.ts";
import { FIRST_TRY, PLANTED } from "#seed/plans/first-try.ts";
import { UPPER_BODY_AND_TRUNK } from "#seed/plans/upper-body-and-trunk.ts";
import { WHOLE_BODY } from "#seed/plans/whole-body.ts";

const PLANS = { UPPER_BODY_AND_TRUNK, WHOLE_BODY, FIRST_TRY };
const found = checkPlan(FIRST_TRY).findings;

describe("the demo plans", () => {
  it.each(Object.entries(PLANS))("%s is read back from its file as it was", (_name, plan) => {
    const read = parsePlan(JSON.stringify(plan));
    expect(read.ok ? read.plan : read).toEqual(plan);
  });

  it.each([
    ["the 25-minute class", UPPER_BODY_AND_TRUNK, 1500],
    ["the 45-minute class", WHOLE_BODY, 2700],
  ] as const)("%s ends on the second, with nothing to fix and nothing to look at again", (_name, plan, seconds) => {
    expect(classClock(plan).total).toBe(seconds);
    expect(checkPlan(plan).findings.filter((f) => f.level !== "info")).toEqual([]);
  });

  it("the 25-minute class has about twenty moves, each with a whole script", () => {
    const moves = UPPER_BODY_AND_TRUNK.items.flatMap((item) => (item.kind === "move" ? [item] : []));
    expect(moves.length).toBeGreaterThanOrEqual(18);
    for (const item of moves) {
      const kinds = item.script?.map((line) => line.kind);
      for (const kind of ["setup", "start", "breath", "form", "easier"] as const)
        expect(kinds, item.id).toContain(kind);
    }
  });
});

describe("the trainee's plan", () => {
  it("has at least a dozen mistakes", () => {
    expect(PLANTED.length).toBeGreaterThanOrEqual(12);
  });

  it.each(PLANTED)("$rule: $mistake", ({ rule, items }) => {
    const hit = found.find((f) => f.rule === rule && same(f.items, items));
    expect(hit, `${rule} finds ${items.join(", ") || "the class"}`).toBeDefined();
  });

  it("shows nothing but its mistakes: whatever is found was planted", () => {
    const open = PLANTED.map(({ rule, items }) => `${rule}: ${items.join(", ")}`);
    const strangers = found.filter((finding) => {
      const at = open.indexOf(`${finding.rule}: ${finding.items.join(", ")}`);
      if (at >= 0) open.splice(at, 1);
      return at < 0;
    });
    expect(strangers.map(({ rule, message }) => `${rule}: ${message}`)).toEqual([]);
  });
});

const same = (a: readonly string[], b: readonly string[]): boolean => a.join() === b.join();
