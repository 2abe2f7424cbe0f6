import { itemName } from "#lib/plan/format.ts";
import type { ScriptLine } from "#lib/plan/schema.ts";
import { COMMON_PRACTICE, defineRule } from "../define/define-rule.ts";
import { exampleMove, examplePlan, fullScript } from "../define/example-plan.ts";
import { limits, numberLimit } from "../define/limit-fields.ts";
import type { RuleExamples } from "../define/types.ts";
import { saidLines } from "../select/said-lines.ts";

const noBreath = fullScript.filter((line) => line.kind !== "breath");
const form = (text: string): ScriptLine => ({ kind: "form", text });

const TELLS_TO_BREATHE =
  /\b(?:breathe|exhale|inhale)\b|\b(?:keep|go on|carry on|continue) breathing\b|\b(?:don[’']t|do not|never|without|no) hold(?:ing)? (?:your|the) breath\b/i;

export const longHoldWithoutBreath = defineRule({
  id: "long-hold-without-breath",
  reads: "voice",
  title: "A long hold without a word about breathing",
  why: "People stop breathing in a hold, and a held breath under strain drives the blood pressure up.",
  fix: "Write a breath line, and leave time to say it during the hold.",
  // A reminder for everybody. The cautions deal with heart and eye conditions.
  level: "look",
  source: COMMON_PRACTICE,
  limits: limits({
    longHoldSeconds: numberLimit({
      from: 1,
      to: 600,
      usual: 30,
      says: "Shortest hold that needs a word about breathing",
    }),
  }),
  messages: {
    unwritten: "{itemName}: a hold of {holdSeconds} and no word about breathing. Write a breath line.",
    unsaid: "{itemName}: a hold of {holdSeconds} and no time to say the breath line. Shorten it, or the other lines.",
  },
  check(ctx, { longHoldSeconds }) {
    const holds = ctx.moves.filter((placed) => {
      const { item, move: m } = placed;
      if (!m || !("holdSeconds" in m.tempo) || item.seconds < longHoldSeconds) return false;
      // The other side and a repeat need no second word, nor a second finding.
      return ctx.earlierSeconds(placed) < longHoldSeconds;
    });
    if (holds.length === 0) return [];
    const lines = saidLines(ctx, (line, placed) => holds.includes(placed) && speaksOfBreath(line));
    return holds.flatMap(({ item }) => {
      const own = lines.filter(({ placed }) => placed.item.id === item.id);
      if (own.some(({ cue }) => cue)) return [];
      const values = { itemName: itemName(ctx.plan, item), holdSeconds: item.seconds };
      return [{ message: own.length > 0 ? ("unsaid" as const) : ("unwritten" as const), items: [item.id], values }];
    });
  },
});

export const longHoldWithoutBreathExamples = (): RuleExamples => ({ pass: passes(), fail: failures() });

const passes = (): RuleExamples["pass"] => [
  { say: "the breath is said", plan: examplePlan([exampleMove("a", { move: "plank" })]) },
  {
    say: "a form line speaks of it",
    plan: examplePlan([exampleMove("a", { move: "plank", script: [...noBreath, form("Keep breathing.")] })]),
  },
  {
    say: "a safety line tells people to breathe",
    plan: examplePlan([
      exampleMove("a", {
        move: "plank",
        script: [...noBreath, { kind: "safety", text: "Keep breathing throughout." }],
      }),
    ]),
  },
  { say: "a hold of 20 s", plan: examplePlan([exampleMove("a", { move: "plank", seconds: 20, script: noBreath })]) },
  {
    say: "the second side was told on the first",
    plan: examplePlan([exampleMove("a", { move: "plank" }), exampleMove("b", { move: "plank", script: noBreath })]),
  },
  { say: "repetitions are not a hold", plan: examplePlan([exampleMove("a", { script: noBreath })]) },
];

const failures = (): RuleExamples["fail"] => [
  {
    say: "a minute of plank",
    plan: examplePlan([exampleMove("a", { move: "plank", seconds: 60, script: noBreath })]),
    expect: ["unwritten"],
  },
  {
    say: "a safety line for people who are out of breath",
    plan: examplePlan([
      exampleMove("a", {
        move: "plank",
        script: [...noBreath, { kind: "safety", text: "Short of breath? Come down." }],
      }),
    ]),
    expect: ["unwritten"],
  },
  {
    say: "a breath line that takes longer than the hold",
    plan: examplePlan([
      exampleMove("a", {
        move: "plank",
        seconds: 40,
        script: [...noBreath, { kind: "breath", text: "Breathe in and out. ".repeat(40) }],
      }),
    ]),
    expect: ["unsaid"],
  },
];

/**
 * Lines of the work need only speak of breath. A safety or set-up line has to tell people to breathe: "short of breath? Stop"
 * does not.
 */
function speaksOfBreath({ kind, text }: ScriptLine): boolean {
  if (kind === "setup" || kind === "safety") return TELLS_TO_BREATHE.test(text);
  return (kind === "breath" && text.trim() !== "") || /\b(?:breath(?:e|es|ing)?|exhal|inhal)/i.test(text);
}
