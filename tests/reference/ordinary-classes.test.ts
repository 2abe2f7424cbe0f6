/**
 * Three classes written as a working coach writes them, against what a senior coach agrees with
 * (`tests/fixtures/ordinary-classes/README.md`).
 */
import { readFileSync } from "node:fs";
import { describe, expect, it, test } from "vitest";
import { checkPlan } from "#lib/analysis/check-plan.ts";
import type { Move, Plan, PlanItem, ScriptLine } from "#lib/plan/schema.ts";
import { parsePlan } from "#lib/plan-file/parse.ts";
import { cautionWithoutSafetyLine } from "#lib/rules/rules/caution-without-safety-line.ts";
import { STARTER_MOVES } from "#lib/starter/library.ts";
import { STARTER_EQUIPMENT } from "#lib/starter/room.ts";
import { PHRASES } from "#seed/phrases/phrases.ts";

const FOLDER = "tests/fixtures/ordinary-classes";
const AGREED: Readonly<Record<string, readonly { rule: string; items: string[]; why: string }[]>> = JSON.parse(
  readFileSync(`${FOLDER}/agreed.json`, "utf8"),
);

function classOf(name: string): Plan {
  const read = parsePlan(readFileSync(`${FOLDER}/${name}.json`, "utf8"));
  if (!read.ok) throw new Error(JSON.stringify(read));
  return read.plan;
}

const nameOf = ({ rule, items }: { readonly rule: string; readonly items: readonly string[] }): string =>
  `${rule}: ${items.join(", ")}`;

describe.each(Object.entries(AGREED))("%s", (name, agreed) => {
  const found = checkPlan(classOf(name)).findings;

  it("has no finding that must be fixed and that a senior coach would not agree with", () => {
    const known = agreed.map(nameOf);
    expect(found.filter((one) => one.level === "must" && !known.includes(nameOf(one))).map(nameOf)).toEqual([]);
  });

  it("has at most eight findings", () => {
    expect(found.length).toBeLessThanOrEqual(8);
  });

  it("has every finding that a senior coach would make", () => {
    const names = found.map(nameOf);
    expect(agreed.map(nameOf).filter((one) => !names.includes(one))).toEqual([]);
  });

  it("is asked for every caution again when its safety lines say nothing", () => {
    const plan = withSafety(classOf(name), "Enjoy this one.");
    const silent = checkPlan(plan, [cautionWithoutSafetyLine]).findings;
    const cautions = new Set(plan.items.flatMap((item) => moveOf(plan, item)?.cautions ?? []));
    const asked = new Set(
      silent.flatMap((one) => (one.values.cautions as string[]).map((tag) => tag.replaceAll(" ", "-"))),
    );
    expect([...cautions].filter((caution) => !asked.has(caution))).toEqual([]);
  });
});

const moveOf = (plan: Plan, item: PlanItem): Move | undefined =>
  item.kind === "move" ? plan.moves[item.move] : undefined;

const withSafety = (plan: Plan, text: string): Plan => ({
  ...plan,
  items: plan.items.map((item) =>
    item.kind === "move"
      ? { ...item, script: (item.script ?? []).map((line) => (line.kind === "safety" ? { ...line, text } : line)) }
      : item,
  ),
});

describe("one move with one safety line", () => {
  const cautioned = Object.entries(STARTER_MOVES).filter(([, move]) => (move.cautions ?? []).length > 0);
  const levels = (id: string, move: Move, text: string) => {
    const script: ScriptLine[] = [{ kind: "safety", text }];
    const item = { id: "a", kind: "move", move: id, side: "both", seconds: 45, springs: { light: 1 }, script } as const;
    const plan: Plan = {
      ...{ format: "springline.plan/1", title: "One move", lengthSeconds: 600, equipment: STARTER_EQUIPMENT },
      ...{ moves: { [id]: move }, items: [item] },
    };
    return checkPlan(plan, [cautionWithoutSafetyLine]).findings.map((one) => one.level);
  };

  test.each(["Enjoy this one.", "Be careful.", "If anything hurts, stop."])("must be fixed everywhere: %s", (text) => {
    expect(cautioned.length).toBeGreaterThan(30);
    expect(cautioned.filter(([id, move]) => levels(id, move, text).join() !== "must").map(([id]) => id)).toEqual([]);
  });

  it("is answered by the demo studio's line for it", () => {
    const said = cautioned.flatMap(([id, move]) => {
      const text = PHRASES[id]?.safety;
      return text ? [{ id, found: levels(id, move, text) }] : [];
    });
    expect(said.length).toBeGreaterThan(25);
    expect(said.filter(({ found }) => found.length > 0)).toEqual([]);
  });
});
