/** Every message of every rule, and every act offered, reads as one English sentence whatever names and numbers are in it. */

import fc from "fast-check";
import { describe, expect, it, test } from "vitest";
import { checkPlan } from "#lib/analysis/check-plan.ts";
import type { Move, Plan, PlanItem } from "#lib/plan/schema.ts";
import { remedyFor } from "#lib/remedies/remedies.ts";
import { examplesOf } from "#lib/rules/examples.ts";
import { RULES } from "#lib/rules/registry.ts";
import { LONG, often } from "#tests/support/long.ts";
import { faultsOfPhrase, faultsOfSentence, type Names } from "#tests/support/plain-english.ts";
import { validPlan } from "#tests/support/plan-arbitrary.ts";

const SEVERAL = ["Lunge pulses", "Shoulder circles", "Calf raises"];
const ONE = ["Plank hold", "Bear crawl", "Side bend"];

type Rename = (plan: Plan) => Plan;

/** Names that people give, in place of whatever stood there: several of one thing, or one. */
const named =
  (names: readonly string[]): Rename =>
  (plan) => ({
    ...plan,
    title: "Example class",
    moves: Object.fromEntries(
      Object.entries(plan.moves).map(([id, move], i): [string, Move] => [
        id,
        { ...move, name: names[i % names.length] ?? "", ...(move.easier ? { easier: ["Drop to the knees."] } : {}) },
      ]),
    ),
    equipment: {
      ...plan.equipment,
      springs: plan.equipment.springs.map((s, i) => ({ ...s, label: ["light", "firm", "middle"][i % 3] ?? "light" })),
    },
    ...(plan.theme ? { theme: { ...plan.theme, name: "Arms and legs" } } : {}),
    items: plan.items.map((item): PlanItem => {
      if (item.kind === "heading") return { ...item, title: "Legs and back" };
      return item.kind === "pause" ? { ...item, text: "Rest" } : item;
    }),
  });

/** Each item twice or three times over: counts of one become several. */
const times =
  (n: number): Rename =>
  (plan) => ({
    ...plan,
    items: plan.items.flatMap((item) =>
      Array.from({ length: n }, (_, k) => (k === 0 ? item : { ...item, id: `${item.id}-${k}` })),
    ),
  });

/** Times that are one second, two, and one of a repetition more. */
const lasting =
  (seconds: number): Rename =>
  (plan) => ({
    ...plan,
    items: plan.items.map((item) => (item.kind === "heading" ? item : { ...item, seconds })),
  });

const OTHER_SHAPES: Readonly<Record<string, Rename>> = {
  "twice over": times(2),
  "three times over": times(3),
  "of 1 s": lasting(1),
  "of 6 s": lasting(6),
};
const KINDS: Readonly<Record<string, Names>> = {
  several: { one: [], several: SEVERAL },
  one: { one: ONE, several: [] },
};

/** Each message with what is wrong in it. */
function faulty(plan: Plan, names: Names): string[] {
  return checkPlan(plan).findings.flatMap((finding) => {
    const faults = faultsOfSentence(finding.message, names).map((fault) => `${fault}: ${finding.message}`);
    const label = remedyFor(plan, finding)?.label;
    return label === undefined ? faults : [...faults, ...faultsOfPhrase(label, names).map((f) => `${f}: ${label}`)];
  });
}

const EXAMPLES = RULES.flatMap((rule) => [...examplesOf(rule).fail, ...examplesOf(rule).pass]);

describe.each(Object.entries(KINDS))("with names of %s", (_, names) => {
  const rename = named(names.one.length > 0 ? names.one : names.several);
  it("every example of every rule", () => {
    for (const { plan } of EXAMPLES) expect(faulty(rename(plan), names)).toEqual([]);
  });
  // A long run gives every example all of these shapes; a usual one gives each second example one of them in turn.
  it.each(Object.keys(OTHER_SHAPES).map((shape, n) => [shape, n] as const))("examples of rules, %s", (shape, nth) => {
    const change = OTHER_SHAPES[shape] as Rename;
    const shapes = Object.keys(OTHER_SHAPES).length;
    for (const [n, { plan }] of EXAMPLES.entries())
      if (LONG || n % (2 * shapes) === nth) expect(faulty(rename(change(plan)), names)).toEqual([]);
  });
  it("any plan at all", () => {
    fc.assert(
      fc.property(validPlan, (plan) => {
        expect(faulty(rename(plan), names)).toEqual([]);
      }),
      { seed: 7, numRuns: often(10, 25) },
    );
  });
});

test("what is said of a rule itself are whole sentences", () => {
  for (const { why, fix, title } of RULES) {
    expect([...faultsOfSentence(why), ...faultsOfSentence(fix), ...faultsOfPhrase(title)]).toEqual([]);
    expect(title).toMatch(/^\p{Lu}.*[^.]$/u);
  }
});

test("the signs find what they are for", () => {
  const names = { one: ["Plank hold"], several: ["Lunge pulses"] };
  for (const [text, fault] of [
    ["Lunge pulses lacks a safety line.", "several with a singular verb"],
    ["Lunge pulses, left is held.", "several with a singular verb"],
    ["Plank hold are held.", "a plural verb after a name"],
    ["It has 1 items.", "one of several"],
    ["It has 0 items.", "none as a figure"],
    ["The  end.", "two spaces"],
    ["Say {springs}.", "a hole"],
    ["For undefined s.", "a hole"],
    ["small.", "no capital"],
    ["No end", "no full stop"],
  ] as const)
    expect(faultsOfSentence(text, names), text).toContain(fault);
});
