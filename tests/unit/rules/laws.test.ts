/** What holds for every rule. There is no list of exceptions. */

import { readdirSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, it, test } from "vitest";
import * as z from "zod/mini";
import { checkPlan } from "#lib/analysis/check-plan.ts";
import type { Plan } from "#lib/plan/schema.ts";
import { ruleContext } from "#lib/rules/context.ts";
import { bothSides, exampleMove, examplePlan } from "#lib/rules/define/example-plan.ts";
import type { AnyRule, FailExample } from "#lib/rules/define/types.ts";
import { examplesOf } from "#lib/rules/examples.ts";
import { RULE_CRASHED } from "#lib/rules/findings.ts";
import { FORMAT_RULE_IDS } from "#lib/rules/format-ids.ts";
import { RULES } from "#lib/rules/registry.ts";
import { often } from "#tests/support/long.ts";
import { damagedPlan, standardsAreKnown, validPlan } from "#tests/support/plan-arbitrary.ts";

test("every rule's id may be named in a plan file", () => {
  expect(RULES.map((rule) => rule.id).filter((id) => !FORMAT_RULE_IDS.has(id))).toEqual([]);
});

const RULE_FILES = readdirSync("lib/rules/rules");
const FAIL_EXAMPLES = RULES.flatMap((rule) => examplesOf(rule).fail.map((example) => ({ rule, example })));

const messageOf = (key: string | undefined): string => key?.split(":")[1] ?? "";
const findingsOf = (rule: AnyRule, plan: Plan) => checkPlan(plan, [rule]).findings;

function deepFreeze<T>(value: T): T {
  if (typeof value === "object" && value !== null && !Object.isFrozen(value)) {
    Object.freeze(value);
    for (const inner of Object.values(value)) deepFreeze(inner);
  }
  return value;
}

/** The same plan with everything that has no order of its own turned round. */
function turnedRound(plan: Plan): Plan {
  const turn = <V>(map: Record<string, V>): Record<string, V> => Object.fromEntries(Object.entries(map).reverse());
  return {
    ...plan,
    moves: turn(plan.moves),
    ...(plan.standards ? { standards: turn(plan.standards) } : {}),
    ...(plan.expected ? { expected: plan.expected.toReversed() } : {}),
    equipment: { ...plan.equipment, springs: plan.equipment.springs.toReversed() },
    items: plan.items.map((i) => (i.kind === "move" ? { ...i, springs: turn(i.springs) } : i)),
  };
}

describe("the list of rules", () => {
  it("names every rule file once, each by its own name, in order", () => {
    const ids = RULES.map((rule) => rule.id);
    expect(RULE_FILES.map((file) => file.replace(/\.ts$/, "")).sort()).toEqual([...ids].sort());
    expect(new Set(ids).size).toBe(ids.length);
    expect(ids).toEqual([...ids].sort());
    expect(standardsAreKnown).toBe(true);
  });
});

describe.each(RULES.map((rule) => [rule.id, rule] as const))("%s", (_id, rule) => {
  it("says what it is, why, what to do and where its numbers come from", () => {
    for (const text of [rule.title, rule.why, rule.fix, rule.source]) expect(text.trim()).not.toBe("");
    expect(rule.why).toMatch(/\.$/);
    expect(rule.fix).toMatch(/\.$/);
    for (const text of Object.values(rule.messages)) expect(text.length).toBeLessThan(160);
  });

  it("has limits that all have a default, numbers with their unit in the name", () => {
    expect(rule.limits.safeParse({}).success).toBe(true);
    for (const [name, value] of Object.entries(rule.limits.parse({}))) {
      if (typeof value === "number") expect(name).toMatch(/(Seconds|Mm|N|Kg|Met|Share|Count)$/);
    }
    expect(rule.limits.safeParse({ "no-such-limit": 1 }).success).toBe(false);
    for (const [name, limit] of Object.entries(rule.limits.shape)) {
      expect(z.globalRegistry.get(limit)?.description, `${name} is described, for whoever sets it`).toMatch(
        /^[A-Z].*[^.]$/,
      );
    }
  });

  it("passes its good examples", () => {
    expect(examplesOf(rule).pass.length).toBeGreaterThanOrEqual(1);
    for (const { say, plan } of examplesOf(rule).pass) expect(findingsOf(rule, plan), say).toEqual([]);
  });

  it("finds exactly what its bad examples expect", () => {
    expect(examplesOf(rule).fail.length).toBeGreaterThanOrEqual(2);
    for (const { say, plan, expect: expected } of examplesOf(rule).fail) {
      const findings = findingsOf(rule, plan);
      expect(
        findings.map((f) => f.rule),
        say,
      ).toEqual(expected.map(() => rule.id));
      expect(
        findings.map((f) => messageOf(f.key)),
        say,
      ).toEqual(expected);
    }
  });

  it("uses every message it has, and fills every hole", () => {
    const used = examplesOf(rule).fail.flatMap((example: FailExample) => example.expect);
    expect([...new Set(used)].sort()).toEqual(Object.keys(rule.messages).sort());
    for (const { plan } of examplesOf(rule).fail) {
      for (const finding of findingsOf(rule, plan)) expect(finding.message).not.toMatch(/\{[a-zA-Z]+\}|undefined|NaN/);
    }
  });

  it("obeys the studio's standard: off, another level", () => {
    for (const { plan } of examplesOf(rule).fail) {
      const setTo = (level: "off" | "info" | "must"): Plan => ({
        ...plan,
        standards: { ...plan.standards, [rule.id]: { ...plan.standards?.[rule.id], level } },
      });
      expect(findingsOf(rule, setTo("off"))).toEqual([]);
      expect(new Set(findingsOf(rule, setTo("info")).map((f) => f.level))).toEqual(new Set(["info"]));
      expect(new Set(findingsOf(rule, setTo("must")).map((f) => f.level))).toEqual(new Set(["must"]));
    }
  });
});

describe("all rules together", () => {
  it("are pure: they read frozen plans, and give the same twice", () => {
    for (const { example } of FAIL_EXAMPLES) {
      const plan = deepFreeze(structuredClone(example.plan));
      expect(checkPlan(plan)).toEqual(checkPlan(plan));
      expect(crashesIn(plan)).toEqual([]);
    }
  });

  it("never throw on valid plans, and find only items that exist, in order, with messages of their own", () => {
    fc.assert(
      fc.property(validPlan, (plan) => {
        const frozen = deepFreeze(plan);
        expect(crashesIn(frozen)).toEqual([]);
        const place = new Map(plan.items.map((item, i) => [item.id, i]));
        for (const finding of checkPlan(frozen).findings) {
          const places = finding.items.map((id) => place.get(id) ?? -1);
          expect(places).toEqual([...places].sort((a, b) => a - b));
          expect(places).not.toContain(-1);
          const rule = RULES.find((r) => r.id === finding.rule);
          expect(Object.keys(rule?.messages ?? {})).toContain(messageOf(finding.key));
          expect(JSON.parse(JSON.stringify(finding))).toEqual(finding);
        }
      }),
      { seed: 20, numRuns: often(20, 300) },
    );
  });

  it("never throw on damaged plans", () => {
    fc.assert(
      fc.property(damagedPlan, (plan) => {
        expect(crashesIn(deepFreeze(plan))).toEqual([]);
        JSON.stringify(checkPlan(plan));
      }),
      { seed: 21, numRuns: often(25, 500) },
    );
  });

  it("do not depend on the order of what has none", () => {
    fc.assert(
      fc.property(validPlan, (plan) => {
        const strip = (p: Plan) =>
          checkPlan(p).findings.map(({ rule, items, level, key }) => ({ rule, items, level, key }));
        expect(strip(turnedRound(plan))).toEqual(strip(plan));
      }),
      { seed: 22, numRuns: often(15, 200) },
    );
  });

  it("give findings in plan order, then by level, then by rule, each with a key of its own", () => {
    fc.assert(
      fc.property(validPlan, (plan) => {
        const place = new Map(plan.items.map((item, i) => [item.id, i]));
        const levels = ["must", "look", "info"];
        const { findings } = checkPlan(plan);
        const ranks = findings.map(
          (f) =>
            [f.items[0] === undefined ? -1 : (place.get(f.items[0]) ?? -1), levels.indexOf(f.level), f.rule] as const,
        );
        const sorted = [...ranks].sort(
          (a, b) => a[0] - b[0] || a[1] - b[1] || (a[2] < b[2] ? -1 : Number(a[2] > b[2])),
        );
        expect(ranks).toEqual(sorted);
        expect(new Set(findings.map((f) => f.key)).size).toBe(findings.length);
      }),
      { seed: 23, numRuns: often(15, 200) },
    );
  });

  it("keep their pace on a class of sixty items (milliseconds a rule, for information)", () => {
    const items = Array.from({ length: 30 }, (_, i) => bothSides(`row-${i}`, { seconds: 40 + i })).flat();
    const plan = examplePlan([...items, exampleMove("last", { move: "plank", script: [] })], {
      expected: ["recent-surgery"],
    });
    const ctx = ruleContext(plan);
    const times = RULES.map((rule) => {
      const start = performance.now();
      for (let run = 0; run < 20; run++) rule.within({}).check(ctx);
      return { rule: rule.id, ms: Math.round(((performance.now() - start) / 20) * 1000) / 1000 };
    });
    const slowest = times.sort((a, b) => b.ms - a.ms).slice(0, 3);
    console.info(
      `slowest rules on ${plan.items.length} items: ${slowest.map((t) => `${t.rule} ${t.ms} ms`).join(", ")}`,
    );
    expect(new Set(times.map((t) => t.rule))).toEqual(new Set(RULES.map((rule) => rule.id)));
  });
});

describe("a rule that breaks", () => {
  const broken: AnyRule = {
    ...(RULES[0] as AnyRule),
    id: "broken",
    title: "Broken",
    within: () => ({
      limitsRead: true,
      check: () => {
        throw new Error("defect");
      },
    }),
  };

  it("becomes a finding, and the others still run", () => {
    const { findings } = checkPlan(examplePlan([exampleMove("a", { script: [] })]), [broken, ...RULES]);
    expect(findings.filter((f) => f.rule === RULE_CRASHED)).toMatchObject([
      { level: "info", values: { rule: "broken" } },
    ]);
    expect(findings.some((f) => f.rule === "missing-cue")).toBe(true);
  });

  it("reports limits that cannot be read and runs with its own", () => {
    const plan = examplePlan([exampleMove("a", { script: [] })], {
      standards: { "missing-cue": { limits: { requiredKinds: 3 } } },
    });
    const rules = checkPlan(plan).findings.map((f) => f.rule);
    expect(rules).toContain(RULE_CRASHED);
    expect(rules).toContain("missing-cue");
  });
});

/** Rules run bare, so that a crash is seen and not turned into a finding. */
function crashesIn(plan: Plan): string[] {
  const ctx = ruleContext(plan);
  return RULES.flatMap((rule) => {
    try {
      rule.within(plan.standards?.[rule.id]?.limits).check(ctx);
      return [];
    } catch (error) {
      return [`${rule.id}: ${String(error)}`];
    }
  });
}
