/** Lines made to be slow: words that repeat and may be passed over, or that begin many patterns. Time of the processor. */
import { expect, test } from "vitest";
import { planActs } from "#lib/acts/plan-acts.ts";
import type { ScriptLine } from "#lib/plan/schema.ts";
import { exampleMove, examplePlan } from "#lib/rules/define/example-plan.ts";

const LINE = 2000;
const LINES = 20;
/** Ten times what it takes; a reader that tries every combination never ends. */
const MOST_MS = 4000;

test.each([
  "slowly ",
  "gently slowly ",
  "slowly all the way ",
  "first, carriage home, turn, ",
  "kneel\u0301 ",
  "both both ",
  "one two three ",
  "not not ",
])("%s again and again is read in a moment", (words) => {
  const text = words.repeat(Math.floor(LINE / words.length));
  const script = Array.from({ length: LINES }, (): ScriptLine => ({ kind: "setup", text }));
  const plan = examplePlan([exampleMove("a"), exampleMove("b", { facing: "back", springs: { light: 3 }, script })]);
  const began = process.cpuUsage();
  planActs(plan);
  const { user } = process.cpuUsage(began);
  expect(user / 1000).toBeLessThan(MOST_MS);
});
