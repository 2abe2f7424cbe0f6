import { forceN, travelMm } from "#lib/load/load.ts";
import { itemName, springWords } from "#lib/plan/format.ts";
import { LEVELS, type Move, type Plan } from "#lib/plan/schema.ts";
import { COMMON_PRACTICE, defineRule } from "../define/define-rule.ts";
import { exampleMove, exampleMoves, examplePlan } from "../define/example-plan.ts";
import { choicesLimit, limits, numberLimit } from "../define/limit-fields.ts";
import type { Found, RuleExamples } from "../define/types.ts";

const UPRIGHT: readonly Move["position"][] = ["standing", "kneeling", "quadruped", "plank", "inverted"];

const lunge: Move = { ...exampleMoves.squat, name: "Lunge", feet: "carriage", cautions: ["unstable-carriage"] };
const lunges = (springs: Record<string, number>, changes: Partial<Plan> = {}, library: Partial<Move> = {}) =>
  examplePlan([exampleMove("a", { move: "lunge", springs })], {
    moves: { lunge: { ...lunge, ...library } },
    ...changes,
  });

/** Must for standing on a carriage that no spring holds, in a class anybody may come to: it rolls away under them. */
export const tooLightToBeSteady = defineRule({
  id: "too-light-to-be-steady",
  reads: "item",
  title: "The carriage is too light to be steady on",
  why: "A carriage that hardly pulls home runs away under people who stand, kneel or plank on it, and they fall.",
  fix: "Put a spring on or start further out, or keep the move for an experienced class; the machine maker's manual goes first.",
  level: "must",
  source: COMMON_PRACTICE,
  limits: limits({
    minStartN: numberLimit({
      from: 0,
      to: 500,
      usual: 5,
      says: "Least pull of all springs together where the travel starts",
    }),
    levels: choicesLimit({
      of: LEVELS,
      usual: ["first-time", "open"],
      says: "Classes this is looked at in; a plan that does not say its level counts as open",
    }),
  }),
  messages: {
    loose:
      "{itemName}: no spring holds the carriage people {stand} on: put one on, or keep this for an experienced class.",
    light:
      "{itemName}: with {springs} on the carriage is held with {force} N where it starts, and {least} N is the least: add a spring.",
    near: "{itemName}: started {cm} cm nearer to the anchor, the carriage is held with {force} N, and {least} N is the least: start further out.",
  },
  check({ plan, moves }, { minStartN, levels }) {
    if (!levels.includes(plan.level ?? "open")) return [];
    return moves.flatMap(({ item, move: library }): Found<"loose" | "light" | "near">[] => {
      if (!library || !isUnsteady(library)) return [];
      const [xMm] = travelMm(plan, library);
      const force = forceN(plan.equipment, item.springs, { xMm, offsetMm: item.offsetMm ?? 0 });
      if (!(force < minStartN)) return [];
      const items = [item.id];
      const name = itemName(plan, item);
      const holding = Object.values(item.springs).some((count) => count > 0);
      if (!holding) {
        const level = library.position === "standing" ? "must" : "look";
        return [
          { message: "loose", items, level, values: { itemName: name, stand: VERBS[library.position] ?? "are" } },
        ];
      }
      const offsetMm = item.offsetMm ?? 0;
      const usual = forceN(plan.equipment, item.springs, { xMm, offsetMm: 0 });
      if (offsetMm < 0 && usual >= minStartN) {
        const values = { itemName: name, cm: -offsetMm / 10, force, least: minStartN };
        return [{ message: "near", items, level: "look", values }];
      }
      const springs = springWords(plan.equipment, item.springs);
      return [{ message: "light", items, level: "look", values: { itemName: name, springs, force, least: minStartN } }];
    });
  },
});

export const tooLightToBeSteadyExamples = (): RuleExamples => ({
  pass: [
    { say: "one light spring pulls with 10 N", plan: lunges({ light: 1 }) },
    { say: "an experienced class knows what it does", plan: lunges({}, { level: "experienced" }) },
    { say: "a carriage that is not called unstable", plan: lunges({}, {}, { cautions: [] }) },
    { say: "lying down nobody falls", plan: lunges({}, {}, { position: "supine" }) },
  ],
  fail: [
    { say: "standing with no spring on", plan: lunges({}), expect: ["loose"] },
    { say: "a plank with no spring on: to look at", plan: lunges({}, {}, { position: "plank" }), expect: ["loose"] },
    {
      say: "a house that asks for 15 N",
      plan: lunges({ light: 1 }, { standards: { "too-light-to-be-steady": { limits: { minStartN: 15 } } } }),
      expect: ["light"],
    },
    {
      say: "a spring that would hold, its pull taken away by starting 20 cm nearer",
      plan: examplePlan([exampleMove("a", { move: "lunge", springs: { light: 1 }, offsetMm: -200 })], {
        moves: { lunge },
      }),
      expect: ["near"],
    },
  ],
});

const isUnsteady = ({ cautions, position, station, feet, hands }: Move): boolean =>
  cautions?.includes("unstable-carriage") === true &&
  UPRIGHT.includes(position) &&
  (station === "carriage" || feet === "carriage" || hands === "carriage");

const VERBS: Readonly<Partial<Record<Move["position"], string>>> = { standing: "stand", kneeling: "kneel" };
