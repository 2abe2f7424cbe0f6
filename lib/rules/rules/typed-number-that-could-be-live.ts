import { FIELD_WORDS } from "#lib/plan/cue-words.ts";
import { itemName } from "#lib/plan/format.ts";
import type { LiveField, MoveItem, Plan, ScriptLine } from "#lib/plan/schema.ts";
import { claimsOf } from "#lib/talk/claims/claims.ts";
import type { Claim, TimeClaim } from "#lib/talk/claims/types.ts";
import { COMMON_PRACTICE, defineRule } from "../define/define-rule.ts";
import { exampleMove, examplePlan, fullScript } from "../define/example-plan.ts";
import { LATE_TITLES } from "../define/late-titles.ts";
import { limits } from "../define/limit-fields.ts";
import type { RuleExamples } from "../define/types.ts";

const saying = (text: string, kind: ScriptLine["kind"] = "form") =>
  examplePlan([exampleMove("a", { script: [...fullScript, { kind, text }] })]);

export const typedNumberThatCouldBeLive = defineRule({
  id: "typed-number-that-could-be-live",
  reads: "item",
  title: LATE_TITLES["typed-number-that-could-be-live"],
  why: "Typed numbers stay as they were when the plan's times or springs change.",
  fix: "Put a live field in place of the number.",
  level: "info",
  source: COMMON_PRACTICE,
  limits: limits({}),
  messages: {
    typed:
      "{itemName}: “{said}” is typed. Put in the live field “{fieldName}”, which stays right when the plan changes.",
  },
  check({ plan, moves }) {
    return moves.flatMap(({ item }) =>
      (item.script ?? []).flatMap((line, index) => {
        if (line.kind === "crew") return [];
        const typed = claimsOf(line).flatMap((claim) => {
          const field = fieldFor(plan, item, line, claim);
          return field === undefined ? [] : [{ field, said: claim.said }];
        });
        const fields = [...new Set(typed.map(({ field }) => field))];
        return fields.map((field) => {
          const said = typed.find((t) => t.field === field)?.said ?? "";
          const values = {
            itemName: itemName(plan, item),
            said: said.slice(0, 60),
            field,
            fieldName: FIELD_WORDS[field],
          };
          return { message: "typed" as const, items: [item.id], values, about: `${index}-${field}` };
        });
      }),
    );
  },
});

export const typedNumberThatCouldBeLiveExamples = (): RuleExamples => ({
  pass: [
    { say: "the field is there", plan: saying("{seconds-left} seconds left.") },
    { say: "a number of something else", plan: saying("Two more breaths. Count to four.") },
  ],
  fail: [
    { say: "seconds left, typed", plan: saying("20 seconds left."), expect: ["typed"] },
    { say: "springs, typed", plan: saying("One light on.", "setup"), expect: ["typed"] },
  ],
});

/** The live field, without its braces, that would say the same; undefined where there is none. */
function fieldFor(plan: Plan, item: MoveItem, line: ScriptLine, claim: Claim): LiveField | undefined {
  if (claim.says === "time") return timeField(item, claim);
  if (claim.says !== "springs" || line.kind === "easier" || line.kind === "harder" || claim.count === 0)
    return undefined;
  const isOurs = plan.equipment.springs.some(
    ({ label }) => claim.label.replace(/s$/, "") === label.toLowerCase().replace(/s$/, ""),
  );
  const has = Object.values(item.springs).some((n) => n > 0);
  return has && (isOurs || (claim.sure && claim.label === "")) ? "springs" : undefined;
}

/** Seconds left are of the move and minutes left of the class. No field says how much of either is done. */
function timeField(
  item: MoveItem,
  { which, of, unit, seconds, sure }: TimeClaim & Pick<Claim, "sure">,
): LiveField | undefined {
  if (!sure || which !== "left" || of === "block") return undefined;
  const isOfClass = of === "class" || (of === undefined && unit === "minutes" && seconds > item.seconds);
  return isOfClass ? "minutes-left" : "seconds-left";
}
