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

/** Must fix where people stand on a carriage that no spring holds, in a class open to anybody: it rolls away under them. */
export const tooLightToBeSteady = defineRule({
  id: "too-light-to-be-steady",
  reads: "item",
  title: "The springs are too light to hold the carriage steady",
  why: "A carriage that hardly pulls home runs away under people who stand, kneel or plank on it, and they fall.",
  fix: "Put a spring on, start further out, or keep the move for an experienced class; the machine maker's manual comes first.",
  level: "must",
  source: COMMON_PRACTICE,
  limits: limits({
    minStartN: numberLimit({
      from: 0,
      to: 500,
      usual: 5,
      says: "Least pull of all springs together at the start of the travel",
    }),
    levels: choicesLimit({
      of: LEVELS,
      usual: ["first-time", "open"],
      says: "Classes this is checked in; a plan that does not say its level counts as open",
    }),
  }),
  messages: {
    loose:
      "{itemName}: no spring holds the carriage people {stand} on. Put one on, or keep this for an experienced class.",
    light:
      "{itemName}: with {springs} on, the carriage is held with {force:N} at the start; the least is {least:N}. Add a spring.",
    near: "{itemName}: {cm:cm} nearer to the anchor, the carriage is held with {force:N} at the start; the least is {least:N}. Start further out.",
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
    { say: "an experienced class is left to it", plan: lunges({}, { level: "experienced" }) },
    { say: "a move without the caution for an unstable carriage", plan: lunges({}, {}, { cautions: [] }) },
    { say: "nobody falls lying down", plan: lunges({}, {}, { position: "supine" }) },
  ],
  fail: [
    { say: "standing with no spring on", plan: lunges({}), expect: ["loose"] },
    { say: "a plank with no spring on: look again", plan: lunges({}, {}, { position: "plank" }), expect: ["loose"] },
    {
      say: "a studio that asks for 15 N",
      plan: lunges({ light: 1 }, { standards: { "too-light-to-be-steady": { limits: { minStartN: 15 } } } }),
      expect: ["light"],
    },
    {
      say: "a spring that would hold, and a start 20 cm nearer that takes its pull away",
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
