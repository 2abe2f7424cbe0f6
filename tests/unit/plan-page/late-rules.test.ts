/** A page starts without the rules that read claims. Once they are here it finds what the server finds, and draws nothing else anew. */
import { expect, test } from "vitest";
import { deriver } from "#app/_session/derive.ts";
import { checkPlan } from "#lib/analysis/check-plan.ts";
import { createPlanDoc } from "#lib/doc/create.ts";
import { exampleMove, examplePlan } from "#lib/rules/define/example-plan.ts";
import type { AnyRule } from "#lib/rules/define/types.ts";
import { RULES, ruleById } from "#lib/rules/registry.ts";
import { ruleTitle } from "#lib/rules/rule-title.ts";
import { STARTING_RULES } from "#lib/rules/starting-rules.ts";

const LATE = RULES.filter((rule) => !STARTING_RULES.includes(rule)).map(({ id }) => id);
const said = { script: [{ kind: "form" as const, text: "20 seconds left. This is the first move of the class." }] };
const { moves, equipment, ...plan } = examplePlan([exampleMove("a", { script: [] }), exampleMove("b", said)]);

test("what the late rules find is added at its place", () => {
  let rules: readonly AnyRule[] = STARTING_RULES;
  const doc = createPlanDoc({ ...plan, moves, equipment }, { carry: false });
  const derive = deriver(() => rules);
  const before = derive(doc, { moves, equipment });
  rules = RULES;
  const after = derive(doc, { moves, equipment });
  expect([before.moreToCheck, after.moreToCheck]).toEqual([true, false]);
  expect(after.findings).toEqual(checkPlan(after.plan).findings);
  expect(before.findings).toEqual(after.findings.filter(({ rule }) => !LATE.includes(rule)));
  expect(new Set(after.findings.map(({ rule }) => rule))).toEqual(
    new Set([...before.findings.map(({ rule }) => rule), ...LATE]),
  );
  for (const part of ["plan", "rows", "balance", "track"] as const) expect(after[part], part).toBe(before[part]);
});

test("what the server found counts until the plan is checked here with all rules, or changes", () => {
  let rules: readonly AnyRule[] = STARTING_RULES;
  const doc = createPlanDoc({ ...plan, moves, equipment }, { carry: false });
  const read = { moves, equipment };
  const atStart = deriver(() => RULES)(doc, read).findings;
  const derive = deriver(() => rules);
  const first = derive(doc, read, { atStart });
  expect([first.findings, first.moreToCheck]).toEqual([atStart, false]);
  expect(first.findings).toBe(atStart);
  doc.getMap("head").set("closingSeconds", 90);
  const changed = derive(doc, read, { atStart });
  expect(changed.findings).not.toBe(atStart);
  expect(changed.moreToCheck).toBe(true);
  rules = RULES;
  expect(derive(doc, read, { atStart }).findings).toEqual(checkPlan(changed.plan).findings);
});

test("every rule has its title before it is here", () => {
  for (const { id, title } of RULES) expect(ruleTitle(id), id).toBe(title);
  for (const id of ["no-such-rule", "constructor"])
    expect([ruleTitle(id), ruleById(id)]).toEqual([undefined, undefined]);
});
