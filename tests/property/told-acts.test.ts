/** The reader on random plans and texts: an offered set-up reads back as told, and no text makes it fail. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { firstSetupActs, setupActs, setupLine } from "#lib/acts/compose.ts";
import { planActs } from "#lib/acts/plan-acts.ts";
import type { Plan, PlanItem, ScriptLine } from "#lib/plan/schema.ts";
import { walkSetups } from "#lib/transitions/walk.ts";
import { often } from "#tests/support/long.ts";
import { validPlan } from "#tests/support/plan-arbitrary.ts";

/** The plan with these lines for each move, and pauses that say nothing. */
function saying(plan: Plan, scriptOf: (item: string) => readonly ScriptLine[]): Plan {
  const items = plan.items.map((item): PlanItem => {
    if (item.kind === "pause") return { ...item, text: "" };
    return item.kind === "move" ? { ...item, script: [...scriptOf(item.id)] } : item;
  });
  return { ...plan, items };
}

function composed(plan: Plan): Plan {
  const lines = new Map(
    walkSetups(plan).map(({ item, before }) => [
      item.id,
      setupLine(plan, before?.item, item, before ? setupActs(plan, before.item, item) : firstSetupActs(plan, item)),
    ]),
  );
  return saying(plan, (id) => [lines.get(id)].flatMap((line) => line ?? []));
}

const WORDS = (
  "carriage home in out the a two one light heavy springs on off add drop swap for no not don't face front back left " +
  "right turn round side other hand foot handles strap down up take put kneel lie sit stand plank floor platform and then " +
  "before after once first if or same stay keep {springs} {side} {move} , . ; ? 3 12 é 👋 …"
).split(" ");
const text = fc.oneof(
  fc.array(fc.constantFrom(...WORDS), { maxLength: 25 }).map((words) => words.join(" ")),
  fc.string({ maxLength: 80, unit: "grapheme" }),
);

describe("the reader", () => {
  it("reads a composed set-up back as told, all of it", () => {
    let acts = 0;
    fc.assert(
      fc.property(validPlan, (any) => {
        const plan = composed(any);
        for (const { item, planned, told, missing } of planActs(plan)) {
          acts += planned.length;
          const words = plan.items.flatMap((one) => (one.id === item && one.kind === "move" ? (one.script ?? []) : []));
          const say = words.map((line) => line.text).join(" ");
          expect(missing, say).toEqual([]);
          expect(
            told.filter(({ verdict }) => verdict !== "told"),
            say,
          ).toEqual([]);
        }
      }),
      { seed: 51, numRuns: often(150, 600) },
    );
    expect(acts).toBeGreaterThan(often(500, 2000));
  }, 120_000);

  it("never fails, points into the line, and tells the same again", () => {
    let read = 0;
    fc.assert(
      fc.property(validPlan, fc.array(text, { minLength: 6, maxLength: 6 }), (any, texts) => {
        let at = 0;
        const line = (): ScriptLine => ({ kind: "setup", text: texts[at++ % texts.length] || "Here." });
        const plan = saying(any, () => [line(), line()]);
        const rows = planActs(plan);
        expect(planActs(structuredClone(plan))).toEqual(rows);
        for (const { item, planned, told, missing } of rows) {
          const script = plan.items.flatMap((one) =>
            one.id === item && one.kind === "move" ? (one.script ?? []) : [],
          );
          read += told.length;
          expect(planned).toEqual(expect.arrayContaining([...missing]));
          for (const { line: n, from, to } of told) {
            expect(from).toBeLessThan(to);
            expect(to).toBeLessThanOrEqual(script[n]?.text.length ?? 0);
          }
        }
      }),
      { seed: 52, numRuns: often(150, 1000) },
    );
    expect(read).toBeGreaterThan(often(150, 1000));
  }, 120_000);
});
