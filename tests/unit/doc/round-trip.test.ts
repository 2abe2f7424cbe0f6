/** A plan put into a document and read back is the same plan; reading writes nothing; damaged values are skipped. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import * as Y from "yjs";
import { checkPlan } from "#lib/analysis/check-plan.ts";
import { createPlanDoc } from "#lib/doc/create.ts";
import { planParts } from "#lib/doc/layout.ts";
import { readPlan } from "#lib/doc/read.ts";
import type { Plan } from "#lib/plan/schema.ts";
import { parsePlan } from "#lib/plan-file/parse.ts";
import { bothSides, exampleEquipment, exampleMove, examplePlan } from "#lib/rules/define/example-plan.ts";
import { validPlan } from "#tests/support/plan-arbitrary.ts";

const elsewhere = { moves: {}, equipment: { ...exampleEquipment, name: "Another room" } };

/** What the document does not tell apart: no notes, words or lines, and none written down. */
function withoutEmpties(plan: Plan): Plan {
  const { notes, ...rest } = plan;
  const items = rest.items.map((item) => {
    if (item.kind === "pause") {
      const { text, ...pause } = item;
      return text ? { ...pause, text } : pause;
    }
    if (item.kind === "heading") return item;
    const { script, ...performed } = item;
    return script && script.length > 0 ? { ...performed, script } : performed;
  });
  const { standards, ...whole } = rest;
  const kept = standards && Object.keys(standards).length > 0 ? { standards } : {};
  return { ...whole, ...kept, items, ...(notes ? { notes } : {}) };
}

/** The document as another page has it, after the bytes have travelled. */
function copyOf(doc: Y.Doc): Y.Doc {
  const copy = new Y.Doc();
  Y.applyUpdate(copy, Y.encodeStateAsUpdate(doc));
  return copy;
}

describe("a plan in a document", () => {
  it("comes out as it went in, here and on another replica", () => {
    fc.assert(
      fc.property(validPlan, (plan) => {
        const doc = createPlanDoc(plan, { carry: true });
        expect(readPlan(doc, elsewhere)).toEqual(withoutEmpties(plan));
        expect(readPlan(copyOf(doc), elsewhere)).toEqual(withoutEmpties(plan));
      }),
      { seed: 41, numRuns: 120 },
    );
  });

  it("is a complete plan file again", () => {
    fc.assert(
      fc.property(validPlan, (plan) => {
        const read = readPlan(createPlanDoc(plan, { carry: true }), elsewhere);
        expect(parsePlan(JSON.stringify(read))).toEqual({ ok: true, plan: read });
      }),
      { seed: 42, numRuns: 60 },
    );
  });

  it("is read without writing", () => {
    fc.assert(
      fc.property(validPlan, (plan) => {
        const doc = copyOf(createPlanDoc(plan, { carry: true }));
        let updates = 0;
        doc.on("update", () => updates++);
        const before = Y.encodeStateVector(doc);
        readPlan(doc, elsewhere);
        expect(updates).toBe(0);
        expect(Y.encodeStateVector(doc)).toEqual(before);
      }),
      { seed: 43, numRuns: 60 },
    );
  });

  it("takes moves and equipment from the studio when it carries none", () => {
    const plan = examplePlan(bothSides("row"));
    const doc = createPlanDoc(plan, { carry: false });
    const read = readPlan(doc, { moves: plan.moves, equipment: plan.equipment });
    expect(Object.keys(read.moves)).toEqual(["row"]);
    expect(read.equipment).toEqual(plan.equipment);
  });
});

describe("a document somebody damaged", () => {
  const rubbish: unknown[] = [null, 3, "x", true, [], ["a", 3], {}, { muscles: 3 }, [5, 1], { limits: 3 }, Number.NaN];

  it("is still read, without its wrong values, and can be checked", () => {
    for (const value of rubbish) {
      const doc = createPlanDoc(examplePlan([exampleMove("a"), { id: "p", kind: "pause", seconds: 5 }]), {
        carry: true,
      });
      const p = planParts(doc);
      for (const key of ["equipment", "standards", "move.squat", "move.__proto__", "move.Bad Id"])
        p.carried.set(key, value);
      for (const key of ["range", "after", "side", "seconds", "move", "spring.light", "spring.__proto__", "script"]) {
        p.items.get("a")?.set(key, value);
      }
      for (const key of ["lengthSeconds", "expected", "speech", "share.chest", "level"]) p.head.set(key, value);
      const read = readPlan(doc, elsewhere);
      expect(read.items.map((item) => item.id)).toEqual(["a", "p"]);
      expect(read.equipment).toEqual(elsewhere.equipment);
      expect(Object.getPrototypeOf(read.moves)).toBe(Object.prototype);
      expect(() => checkPlan(read)).not.toThrow();
    }
  });
});
