import { forceN, travelMm } from "#lib/load/load.ts";
import { itemName } from "#lib/plan/format.ts";
import type { Move, Plan } from "#lib/plan/schema.ts";
import { STANDARD_GRAVITY } from "#lib/statics/gravity.ts";
import { COMMON_PRACTICE, defineRule } from "../define/define-rule.ts";
import { exampleMove, exampleMoves, examplePlan } from "../define/example-plan.ts";
import { limits, numberLimit } from "../define/limit-fields.ts";
import type { Found, PlacedMove, RuleExamples } from "../define/types.ts";

const kgLimit = (usual: number, who: string) =>
  numberLimit({ from: 20, to: 200, usual, says: `Body weight of ${who}` });
const shareLimit = (usual: number, what: string) =>
  numberLimit({ from: 0, to: 5, usual, says: `Most load half-way, as a share of body weight: ${what}` });

/** Asks where the library does not say what the load should be; where it does, `springs-out-of-range` goes by that. */
export const loadForBody = defineRule({
  id: "load-for-body",
  reads: "item",
  title: "The load is unusual for the people who have to move it",
  why: "What is a fair load for heavy people can be more than a light person can move well.",
  fix: "Choose other springs, or give the move a range of load in the library; the machine maker's manual comes first.",
  level: "look",
  source: COMMON_PRACTICE,
  limits: limits({
    lightKg: kgLimit(55, "light people"),
    middleKg: kgLimit(70, "people in the middle"),
    heavyKg: kgLimit(90, "heavy people"),
    overheadShare: shareLimit(0.25, "presses overhead and for the shoulders or the back of the arms"),
    pushShare: shareLimit(0.45, "other presses with both arms"),
    pullShare: shareLimit(0.4, "pulls with both arms"),
    legPressShare: shareLimit(1.2, "squats lying or sitting, feet on a platform"),
    squatShare: shareLimit(0.4, "other squats"),
    hingeShare: shareLimit(0.5, "hinges"),
    lungeShare: shareLimit(0.4, "lunges"),
    plankShare: shareLimit(0.35, "planks"),
    flexionShare: shareLimit(0.3, "bending forward"),
    rotationShare: shareLimit(0.3, "turning"),
    lateralShare: shareLimit(0.3, "bending sideways"),
    extensionShare: shareLimit(0.3, "bending back"),
    carryShare: shareLimit(0.5, "carrying"),
    oneSideShare: numberLimit({
      from: 0,
      to: 1,
      usual: 0.5,
      says: "How much of that one hand can take, or one leg in a press lying or sitting",
    }),
    leastShare: numberLimit({
      from: 0,
      to: 1,
      usual: 0.02,
      says: "Least load of a press, a pull, a squat or a hinge, as a share of body weight",
    }),
  }),
  messages: {
    heavyForAll:
      "{itemName}: {force:N} half-way is {heavyShare} of even {heavyKg:kg}, and at most {mostShare} is usual. Is that meant? Take springs off if not.",
    heavy:
      "{itemName}: {force:N} half-way is {middleShare} of {middleKg:kg}, and at most {mostShare} is usual. Is that meant? Take springs off if not.",
    heavyForLight:
      "{itemName}: {force:N} half-way is {lightShare} of {lightKg:kg}, and at most {mostShare} is usual. Say what light people take off.",
    slight: "{itemName}: {force:N} half-way is hardly felt, even by {lightKg:kg}. Is that meant? Add a spring if not.",
  },
  check({ plan, moves }, used) {
    return moves.flatMap((placed): Found<Message>[] => {
      const { item, move } = placed;
      const force = loadOf(plan, placed);
      if (!move || force === null) return [];
      const mostShare = used[`${bandOf(move)}Share`] * (isOneSided(move) ? used.oneSideShare : 1);
      const shareOf = (kg: number) => force / (kg * STANDARD_GRAVITY);
      const isOver = (share: number) => share > mostShare + SHOWN_SHARE;
      const shares = { lightShare: shareOf(used.lightKg), middleShare: shareOf(used.middleKg) };
      const { lightKg, middleKg, heavyKg } = used;
      const values = {
        ...{ itemName: itemName(plan, item), force: Math.round(force), mostShare, ...shares },
        ...{ heavyShare: shareOf(heavyKg), lightKg, middleKg, heavyKg },
      };
      const items = [item.id];
      if (isOver(values.heavyShare)) return [{ message: "heavyForAll", items, values }];
      if (isOver(shares.middleShare)) return [{ message: "heavy", items, values }];
      if (isOver(shares.lightShare)) return [{ message: "heavyForLight", items, level: "info", values }];
      const isSlight = MEANT_TO_LOAD.includes(move.pattern) && shares.lightShare < used.leastShare;
      return isSlight ? [{ message: "slight", items, level: "info", values }] : [];
    });
  },
});

export const loadForBodyExamples = (): RuleExamples => ({
  pass: [
    { say: "80 N for a chest press", plan: pressing({ light: 2 }, {}) },
    {
      say: "the library's own range, which another rule checks",
      plan: pressing({ heavy: 2, light: 4 }, { loadN: [20, 400] }),
    },
    {
      say: "160 N overhead, where all weigh 80 kg",
      plan: pressing({ light: 4 }, OVERHEAD, { lightKg: 80, middleKg: 80 }),
    },
    { say: "springs that help", plan: pressing({ heavy: 2, light: 4 }, { resistance: "assisted" }) },
  ],
  fail: [
    {
      say: "350 N pressed overhead, kneeling",
      plan: pressing({ heavy: 2, light: 4 }, OVERHEAD),
      expect: ["heavyForAll"],
    },
    { say: "190 N overhead", plan: pressing({ heavy: 2 }, OVERHEAD), expect: ["heavy"] },
    {
      say: "135 N pulled with one hand: too much for light people only",
      plan: pressing({ heavy: 1, light: 1 }, { hands: "one-handle", pattern: "pull" }),
      expect: ["heavyForLight"],
    },
    {
      say: "a press that hardly pulls",
      plan: pressing({ light: 1 }, { travelMm: [0, 0] }),
      expect: ["slight"],
    },
  ],
});

type Message = "heavyForAll" | "heavy" | "heavyForLight" | "slight";

const OVERHEAD = { name: "Overhead press", muscles: { shoulders: 1 } };
const pressing = (springs: Record<string, number>, changes: Partial<Move>, set: Record<string, number> = {}): Plan =>
  examplePlan([exampleMove("a", { move: "press", springs })], {
    moves: { press: { ...exampleMoves.press, ...changes } },
    standards: { "load-for-body": { limits: set } },
  });

const MEANT_TO_LOAD: readonly Move["pattern"][] = ["push", "pull", "squat", "hinge"];

/** Newtons half-way; null where springs do not resist, none is on, or the library has a range of its own. */
function loadOf(plan: Plan, { item, move }: PlacedMove): number | null {
  if (move?.resistance !== "springs" || move.loadN) return null;
  const [from, to] = travelMm(plan, move);
  const force = forceN(plan.equipment, item.springs, { xMm: (from + to) / 2, offsetMm: item.offsetMm ?? 0 });
  return Number.isFinite(force) && Object.values(item.springs).some((count) => count > 0) ? force : null;
}

/** Shares are shown rounded down, and nobody is told that 25% is more than 25%. */
const SHOWN_SHARE = 0.01;

const isOneSided = (move: Move): boolean =>
  move.hands === "one-handle" || (bandOf(move) === "legPress" && move.sides !== "both");

/** A press counts as one for the shoulders when they work more than the chest. */
function bandOf(move: Move): Move["pattern"] | "overhead" | "legPress" {
  const { pattern, muscles, cautions, position, feet } = move;
  if (pattern === "push") {
    const forShoulders = (muscles.shoulders ?? 0) > (muscles.chest ?? 0);
    return forShoulders || cautions?.includes("overhead") ? "overhead" : pattern;
  }
  const lies = position === "supine" || position === "seated" || position === "side-lying";
  return pattern === "squat" && lies && feet.endsWith("-platform") ? "legPress" : pattern;
}
