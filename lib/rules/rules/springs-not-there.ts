import { countWord, itemName, springLabel } from "#lib/plan/format.ts";
import { springOf } from "#lib/plan/lookup.ts";
import { defineRule } from "../define/define-rule.ts";
import { exampleMove, examplePlan } from "../define/example-plan.ts";
import { limits } from "../define/limit-fields.ts";
import type { Found, RuleExamples } from "../define/types.ts";

/** Must fix: the plan cannot be carried out on the floor, and people put on springs that nobody chose. */
export const springsNotThere = defineRule({
  id: "springs-not-there",
  reads: "item",
  title: "The room does not have these springs",
  why: "The set-up cannot be made on this room's machines, so people improvise a load that nobody chose.",
  fix: "Use springs that the room has, and no more than it has.",
  level: "must",
  source: "the plan's own equipment list",
  limits: limits({}),
  messages: {
    "too-many":
      "{itemName}: {wantedInWords} {spring} planned and the machine has {there}. Take off {tooManyInWords} {spring}.",
    unknown: "{itemName}: the plan asks for the spring {spring}, which this room does not have. Choose another.",
  },
  check({ plan, moves }) {
    return moves.flatMap(({ item }) =>
      Object.keys(item.springs)
        .sort()
        .flatMap((id): Found<"too-many" | "unknown">[] => {
          const wanted = item.springs[id] ?? 0;
          const spring = springOf(plan, id);
          if (wanted <= (spring?.count ?? 0)) return [];
          const values = {
            itemName: itemName(plan, item),
            spring: springLabel(plan.equipment, id),
            springId: id,
            wanted,
          };
          if (!spring) return [{ message: "unknown", items: [item.id], about: id, values }];
          const there = spring.count === 0 ? "none" : `only ${countWord(spring.count)}`;
          const counts = { there, count: spring.count, tooMany: wanted - spring.count };
          return [{ message: "too-many", items: [item.id], about: id, values: { ...values, ...counts } }];
        }),
    );
  },
});

export const springsNotThereExamples = (): RuleExamples => ({
  pass: [
    { say: "all four light springs", plan: examplePlan([exampleMove("a", { springs: { light: 4 } })]) },
    { say: "none of a spring nobody has", plan: examplePlan([exampleMove("a", { springs: { light: 1, extra: 0 } })]) },
  ],
  fail: [
    {
      say: "three heavy where there are two",
      plan: examplePlan([exampleMove("a", { springs: { heavy: 3 } })]),
      expect: ["too-many"],
    },
    {
      say: "a spring of another room",
      plan: examplePlan([exampleMove("a", { springs: { medium: 1 } })]),
      expect: ["unknown"],
    },
  ],
});
