import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { sameData } from "#lib/plan/same-data.ts";
import type { LineBegin, Plan, PlanItem } from "#lib/plan/schema.ts";
import { planChanges } from "#lib/plan-diff/plan-changes.ts";
import { bothSides, exampleMove, exampleMoves, examplePlan } from "#lib/rules/define/example-plan.ts";
import { validPlan } from "#tests/support/plan-arbitrary.ts";

const [left, right] = bothSides("row", { seconds: 45 }, { seconds: 45 });
const plan = (items: PlanItem[], changes: Partial<Plan> = {}): Plan => examplePlan(items, changes);
const base = plan([left as PlanItem, right as PlanItem, exampleMove("p", { move: "plank" })]);
const withItem = (index: number, change: Partial<PlanItem>): Plan => ({
  ...base,
  items: base.items.map((item, i) => (i === index ? ({ ...item, ...change } as PlanItem) : item)),
});

describe("what changed", () => {
  it.each<[string, Plan, string[]]>([
    ["time", withItem(1, { seconds: 60 }), ["Kneeling row, right: 45 s became 60 s."]],
    ["springs", withItem(0, { springs: { light: 2 } }), ["Kneeling row, left, springs: one light became two light."]],
    ["added", { ...base, items: [...base.items, exampleMove("n")] }, ["Squat was added after Plank hold."]],
    ["added first", { ...base, items: [exampleMove("n"), ...base.items] }, ["Squat was added at the start."]],
    ["removed", { ...base, items: base.items.slice(0, 2) }, ["Plank hold was removed."]],
    [
      "moved",
      { ...base, items: [base.items[2], base.items[0], base.items[1]] as PlanItem[] },
      ["Plank hold was moved at the start."],
    ],
    ["head", { ...base, openingSeconds: 90 }, ["The opening: the default became 90 s."]],
    ["people", { ...base, people: 10 }, ["How many change at once: one became 10."]],
    [
      "spread",
      { ...base, equipment: { ...base.equipment, spreadShare: 0.25 } },
      ["How much people differ in a change: the usual became 25%."],
    ],
    ["title", { ...base, title: "Arms" }, ["The title: “Example class” became “Arms”."]],
    [
      "library",
      { ...base, moves: { ...exampleMoves, squat: { ...exampleMoves.squat, position: "kneeling" } } },
      ["The move Squat, position: standing became kneeling."],
    ],
    [
      "standards",
      { ...base, standards: { "missing-cue": { level: "off" } } },
      ["The studio standard for missing cue, level: the usual became off."],
    ],
  ])("says it in a sentence: %s", (_what, after, sentences) => {
    expect(planChanges(base, after)).toEqual(sentences);
  });

  // NIST SP 811, B.8: 120 N are 26.98 lbf, 300 mm are 11.81 in, 60 kg are 132.28 lb, 0.2 N/mm are 1.142 lbf/in.
  const [light] = base.equipment.springs;
  const standard = (limits: Record<string, unknown>): Plan => ({ ...base, standards: { "load-for-body": { limits } } });
  it.each<[string, Plan, string[]]>([
    [
      "place",
      withItem(0, { offsetMm: 300 }),
      ["starting place: the usual place became 11.8 in further from the anchor."],
    ],
    [
      "load and travel",
      { ...base, moves: { ...exampleMoves, row: { ...exampleMoves.row, loadN: [120, 120], travelMm: [0, 300] } } },
      ["load: not set became 26.98 lbf.", "travel: not set became 0 to 11.81 in."],
    ],
    [
      "machine",
      { ...base, equipment: { ...base.equipment, carriageTravelMm: 300 } },
      ["The carriage's travel: 39.37 in became 11.81 in."],
    ],
    [
      "spring",
      {
        ...base,
        equipment: {
          ...base.equipment,
          springs: base.equipment.springs.map((s) => (s === light ? { ...s, preloadN: 120, stiffnessNPerMm: 0.2 } : s)),
        },
      },
      ["stiffness: 0.685 lbf per in became 1.142 lbf per in.", "preload: 2.25 lbf became 26.98 lbf."],
    ],
    [
      "limits",
      standard({ lightKg: 60, pushShare: 0.5 }),
      ["light: the usual became 132.28 lb.", "push: the usual became 50%."],
    ],
  ])("says it in the units of whoever reads: %s", (_what, after, ends) => {
    const said = planChanges(base, after, { force: "lbf", length: "in" });
    expect(said).toEqual(ends.map((end) => expect.stringContaining(end)));
    expect(planChanges(base, after).join(" ")).not.toMatch(/lb| in\b/);
  });

  it("says which words changed, which came and which went", () => {
    const script = (...texts: string[]) => withItem(0, { script: texts.map((text) => ({ kind: "form", text })) });
    expect(planChanges(script("a", "b", "c"), script("a", "x", "c"))).toEqual([
      "The words of Kneeling row, left (form) changed: “b” became “x”.",
    ]);
    expect(planChanges(script("a", "c"), script("a", "b", "c"))).toEqual([
      "A line of Kneeling row, left (form) was added: “b”.",
    ]);
    expect(planChanges(script("a", "b"), script("a"))).toEqual([
      "A line of Kneeling row, left (form) was removed: “b”.",
    ]);
  });

  it("says when a line begins at another time", () => {
    const script = (at?: LineBegin) => withItem(0, { script: [{ kind: "form", text: "a", ...(at ? { at } : {}) }] });
    expect(planChanges(script(), script({ afterSeconds: 10 }))).toEqual([
      "A line of Kneeling row, left (form) now begins after 10 s: “a”.",
    ]);
    expect(planChanges(script({ afterSeconds: 10 }), script({ leftSeconds: 10 }))).toEqual([
      "A line of Kneeling row, left (form) now begins with 10 s left: “a”.",
    ]);
    expect(planChanges(script({ leftSeconds: 10 }), script())).toEqual([
      "A line of Kneeling row, left (form) no longer has a time of its own: “a”.",
    ]);
    expect(planChanges(script({ leftSeconds: 10 }), script({ leftSeconds: 10 }))).toEqual([]);
  });

  it("names only the item that moved, not those it passed", () => {
    const items = ["a", "b", "c", "d", "e"].map((id) =>
      exampleMove(id, { side: "both", ...(id === "b" ? { move: "plank" } : {}) }),
    );
    const [a, b, c, d, e] = items as [PlanItem, PlanItem, PlanItem, PlanItem, PlanItem];
    expect(planChanges(plan([a, b, c, d, e]), plan([a, c, d, e, b]))).toEqual(["Plank hold was moved after Squat."]);
  });

  it("is empty for the same plan and never empty for another", () => {
    fc.assert(
      fc.property(validPlan, validPlan, (a, b) => {
        expect(planChanges(a, structuredClone(a))).toEqual([]);
        expect(planChanges(a, b).length > 0).toBe(!sameData(a, b));
        for (const sentence of planChanges(a, b)) expect(sentence).toMatch(/[.!?…]”?$/s);
      }),
      { seed: 31, numRuns: 200 },
    );
  });

  it("finds every single key that is changed or taken away", () => {
    fc.assert(
      fc.property(validPlan, fc.nat(), (a, n) => {
        const places = leaves(a);
        const b = structuredClone(a);
        const place = places[n % places.length];
        if (!place) return;
        const holder = place
          .slice(0, -1)
          .reduce<Record<string, unknown>>((at, k) => at[k] as Record<string, unknown>, b as never);
        const key = place.at(-1) as string;
        const old = holder[key];
        holder[key] = typeof old === "number" ? old + 1 : typeof old === "boolean" ? !old : `${String(old)}x`;
        expect(planChanges(a, b).length, place.join("/")).toBeGreaterThan(0);
      }),
      { seed: 32, numRuns: 500 },
    );
  });
});

/** Paths of all numbers, texts and truths in a plan. */
function leaves(value: unknown, path: string[] = []): string[][] {
  if (typeof value !== "object" || value === null) return [path];
  return Object.entries(value).flatMap(([key, inner]) => leaves(inner, [...path, key]));
}
