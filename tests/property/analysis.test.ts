/**
 * What is kept from one state of a plan to the next never shows: after any edits a reader and an analyst that saw them all
 * answer as ones that see the document for the first time. A long run makes ten thousand edits.
 */
import { isDeepStrictEqual } from "node:util";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type PlanAnalysis, PlanAnalyst } from "#lib/analysis/analysis.ts";
import { analyse } from "#lib/analysis/check-plan.ts";
import { createPlanDoc } from "#lib/doc/create.ts";
import { PlanReader } from "#lib/doc/plan-reader.ts";
import { readDeleted, readPlan } from "#lib/doc/read.ts";
import type { Plan } from "#lib/plan/schema.ts";
import { ruleContext } from "#lib/rules/context.ts";
import type { Finding } from "#lib/rules/define/types.ts";
import { READS } from "#lib/rules/define/types.ts";
import { batchOf, findingsInOrder } from "#lib/rules/findings.ts";
import { RULES } from "#lib/rules/registry.ts";
import { studioRulesOf } from "#lib/rules/studio-rules.ts";
import { Ledger } from "#tests/property/acts.ts";
import { type Edited, editOnce } from "#tests/property/analysis-edits.ts";
import { Dice } from "#tests/support/dice.ts";
import { often } from "#tests/support/long.ts";
import { longClass } from "#tests/support/long-class.ts";
import { validPlan } from "#tests/support/plan-arbitrary.ts";

/** Each costs a first look at the whole plan. */
const EDITS = often(120, 10_000);
/** For each way of reading a plan. */
const SEEDS = Array.from({ length: often(1, 20) }, (_, n) => n);

const answers = ({ clock, balance, talk, classTalk, track, findings }: PlanAnalysis) => ({
  ...{ clock, balance, classTalk, track, findings },
  talk: [...talk],
});

function aClass(carry: boolean): Edited {
  const plan = longClass(8, 30);
  const { moves, equipment, standards = {} } = plan;
  return { doc: createPlanDoc(plan, { carry }), studio: { moves, equipment, standards }, ledger: new Ledger() };
}

describe("[INV-19] after each of many edits", () => {
  test.each(
    SEEDS.flatMap((n) => [
      ["of a plan read with its studio", false, 2 * n + 1] as const,
      ["of a plan that carries its own", true, 2 * n + 2] as const,
    ]),
  )(
    "%s nothing kept is taken for something else",
    (_, carry, seed) => {
      const dice = new Dice(seed);
      const at = aClass(carry);
      const reader = new PlanReader(at.doc);
      const analyst = new PlanAnalyst(RULES);
      for (let edit = 0; edit < EDITS / 2 / SEEDS.length; edit++) {
        editOnce(at, dice);
        const { plan } = reader.read(at.studio);
        const fresh = readPlan(at.doc, at.studio);
        const [found, wanted] = [answers(analyst.of(plan)), answers(analyse(fresh))];
        if (isDeepStrictEqual(plan, fresh) && isDeepStrictEqual(found, wanted)) continue;
        expect(plan, `the plan after edit ${edit}`).toEqual(fresh);
        expect(found, `the answers after edit ${edit}`).toEqual(wanted);
      }
      expect(reader.takenOut).toEqual(readDeleted(at.doc));
      expect(answers(analyst.of(reader.read(at.studio).plan)).findings.length).toBeGreaterThan(0);
    },
    30_000 + EDITS * 100,
  );

  test("analyses of two versions may be asked in any order", () => {
    const dice = new Dice(3);
    const at = aClass(false);
    const analyst = new PlanAnalyst(RULES);
    const before = readPlan(at.doc, at.studio);
    const first = analyst.of(before);
    for (let i = 0; i < 20; i++) editOnce(at, dice);
    const after = readPlan(at.doc, at.studio);
    expect(answers(analyst.of(after))).toEqual(answers(analyse(after)));
    expect(answers(first)).toEqual(answers(analyse(before)));
  });
});

describe("an unchanged part stays the same object", () => {
  test("items, moves and machines of the plan", () => {
    const at = aClass(false);
    const reader = new PlanReader(at.doc);
    const before = reader.read(at.studio).plan;
    const id = before.items.find((item) => item.kind === "move")?.id ?? "";
    at.doc.getMap<import("yjs").Map<unknown>>("items").get(id)?.set("seconds", 77);
    const after = reader.read(at.studio).plan;
    expect(after.items.filter((item, i) => item !== before.items[i]).map((item) => item.id)).toEqual([id]);
    expect(after.moves).toBe(before.moves);
    expect(after.equipment).toBe(before.equipment);
    expect(reader.read(at.studio).plan).toBe(after);
  });

  test("findings about other parts", () => {
    const plan = longClass(20, 120);
    const analyst = new PlanAnalyst(RULES);
    const before = analyst.of(plan).findings;
    const [first] = plan.items.filter((item) => item.kind === "move");
    const items = plan.items.map((item) => (item === first ? { ...first, script: [] } : item));
    const after = analyst.of({ ...plan, items }).findings;
    const same = after.filter((finding) => before.includes(finding));
    expect(same.length).toBeGreaterThan(before.length / 2);
    expect(after).toEqual(analyse({ ...plan, items }).findings);
  });
});

describe("what a rule declares to read", () => {
  /** Every rule given the whole plan, whatever it declares to read. */
  function unlimited(plan: Plan): readonly Finding[] {
    const { rules } = studioRulesOf(RULES, plan.standards);
    return findingsInOrder(rules, plan.items, [batchOf(rules, ruleContext(plan))]);
  }
  const isAll = (plan: Plan) => {
    const [found, wanted] = [analyse(plan).findings, unlimited(plan)];
    if (!isDeepStrictEqual(found, wanted)) expect(found).toEqual(wanted);
  };

  test("is all that it reads: given the whole plan it finds nothing else", () => {
    fc.assert(fc.property(validPlan, isAll), { seed: 31, numRuns: often(25, 150) });
    for (const plan of [longClass(30, 160), longClass(12, 200)]) isAll(plan);
  });

  test("is one of the known parts", () => {
    expect(RULES.filter((rule) => !READS.includes(rule.reads))).toEqual([]);
    expect(new Set(RULES.map((rule) => rule.reads))).toEqual(new Set(READS));
  });
});
