/** A page asks for the server's findings only where it found something else in the very same plan, and only once. */
import { describe, expect, test } from "vitest";
import { deriver } from "#app/_session/derive.ts";
import { servedFindings } from "#app/_session/opinion-parts.ts";
import { SecondOpinion, type Served } from "#app/_session/second-opinion.ts";
import { analyse } from "#lib/analysis/check-plan.ts";
import { Marker } from "#lib/analysis/marks.ts";
import { createPlanDoc } from "#lib/doc/create.ts";
import type { Plan } from "#lib/plan/schema.ts";
import { exampleMove, examplePlan } from "#lib/rules/define/example-plan.ts";
import type { Finding } from "#lib/rules/define/types.ts";
import { RULES } from "#lib/rules/registry.ts";

const plan = examplePlan([exampleMove("a", { script: [] }), exampleMove("b")]);
const { findings } = analyse(plan);
const named = (of: Plan, found: readonly Finding[]) => {
  const marker = new Marker();
  return { plan: marker.plan(of) ?? "", findings: marker.findings(found) ?? "" };
};

function page(own: { plan: Plan; findings: readonly Finding[] }) {
  const taken: Served[] = [];
  let asked = 0;
  let due: (() => void) | null = null;
  const marker = new Marker();
  const opinion = new SecondOpinion({
    own: () => own,
    marker: async () => marker,
    async ask() {
      asked++;
      return servedFindings({ plan: named(own.plan, []).plan, findings: [] });
    },
    take: (served) => taken.push(served),
    later(run) {
      due = run;
      return () => {
        due = null;
      };
    },
  });
  return {
    taken,
    asked: () => asked,
    async hear(names: { plan: string; findings: string }) {
      opinion.hear(names);
      due?.();
      await new Promise((resolve) => setImmediate(resolve));
    },
  };
}

describe("the server has checked", () => {
  test("and found the same: nothing is fetched", async () => {
    const { hear, asked } = page({ plan: structuredClone(plan), findings: structuredClone(findings) });
    await hear(named(plan, findings));
    expect(asked()).toBe(0);
  });

  test("another plan than this page holds now: nothing is fetched", async () => {
    const { hear, asked } = page({ plan, findings });
    const longer = { ...plan, items: [...plan.items, exampleMove("c")] };
    await hear(named(longer, analyse(longer).findings));
    expect(asked()).toBe(0);
  });

  test("and found something else in the same plan: its findings are fetched once and count", async () => {
    const { hear, asked, taken } = page({ plan, findings });
    await hear(named(plan, findings.slice(1)));
    await hear(named(plan, findings.slice(1)));
    expect(asked()).toBe(1);
    expect(taken).toMatchObject([{ plan: named(plan, []).plan, findings: [] }]);
  });
});

test("answers that come while the page waits for the rest of its rules are compared once", async () => {
  const waiting: ((marker: Marker) => void)[] = [];
  let asked = 0;
  const opinion = new SecondOpinion({
    own: () => ({ plan, findings }),
    marker: () => new Promise((resolve) => waiting.push(resolve)),
    async ask() {
      asked++;
      return null;
    },
    take: () => undefined,
    later(run) {
      run();
      return () => undefined;
    },
  });
  for (let news = 0; news < 3; news++) opinion.hear(named(plan, findings.slice(1)));
  expect(asked).toBe(0);
  for (const come of waiting) come(new Marker());
  await new Promise((resolve) => setImmediate(resolve));
  expect(asked).toBe(1);
});

test("what the server found counts for the plan it was found in, and no longer", () => {
  const { moves, equipment } = plan;
  const doc = createPlanDoc(plan, { carry: false });
  const derive = deriver(() => RULES);
  const own = derive(doc, { moves, equipment });
  expect(own.findings.length).toBeGreaterThan(0);
  const served = servedFindings({ plan: named(own.plan, []).plan, findings: [] });
  expect(derive(doc, { moves, equipment }, { served: served }).findings).toEqual([]);
  doc.getMap("head").set("closingSeconds", 90);
  expect(derive(doc, { moves, equipment }, { served: served }).findings.length).toBeGreaterThan(0);
});

test("names say what is checked: another title, another order of keys is the same plan; another word is not", () => {
  const turned = Object.fromEntries(Object.entries(plan).reverse()) as Plan;
  expect(named({ ...turned, title: "Another", notes: "Notes" }, []).plan).toBe(named(plan, []).plan);
  const items = plan.items.map((item) => (item.id === "b" ? { ...item, seconds: 1 } : item));
  expect(named({ ...plan, items: items as Plan["items"] }, []).plan).not.toBe(named(plan, []).plan);
  expect(new Marker().plan({ ...plan, lengthSeconds: Number.NaN })).toBeNull();
});
