import type { Act } from "#lib/acts/judged.ts";
import { changeTold, type HeardAct, toldIn } from "#lib/acts/plan-acts.ts";
import { agree, itemName, tagWords } from "#lib/plan/format.ts";
import type { MoveItem, Plan } from "#lib/plan/schema.ts";
import type { SetupStep } from "#lib/transitions/walk.ts";
import { COMMON_PRACTICE, defineRule } from "../define/define-rule.ts";
import { exampleMove, exampleMoves, examplePlan } from "../define/example-plan.ts";
import { limits } from "../define/limit-fields.ts";
import type { Found, RuleExamples } from "../define/types.ts";

type Message = "handles" | "strap" | "handles-late" | "strap-late" | "no-time";

const setup = (text: string, transitionSeconds?: number) => ({
  script: [{ kind: "setup" as const, text }],
  ...(transitionSeconds === undefined ? {} : { transitionSeconds }),
});
const toPlank = (text: string, seconds?: number) =>
  examplePlan([exampleMove("a", { move: "press" }), exampleMove("b", { move: "plank", ...setup(text, seconds) })]);
const moves = { ...exampleMoves, strapped: { ...exampleMoves.squat, feet: "cable-strap" as const } };
const outOfStrap = (text: string, changes: Partial<MoveItem> = {}) =>
  examplePlan([exampleMove("a", { move: "strapped" }), exampleMove("b", { ...changes, ...setup(text) })], { moves });

/**
 * Must fix for a strap, since people fall who stand up with a foot in one. A handle only gets in the way of a hand that
 * should bear weight, so it is worth another look.
 */
export const handOrFootNotFree = defineRule({
  id: "hand-or-foot-not-free",
  reads: "change",
  title: "A hand or a foot is not free for the next move",
  why: "A foot still in a strap trips people as they stand up, and a hand round a handle cannot bear weight.",
  fix: "Say in the set-up what to put down or step out of, and plan the time for it.",
  level: "must",
  source: COMMON_PRACTICE,
  limits: limits({}),
  messages: {
    handles:
      "{itemName}: people still hold {held} as their hands go {place}, and no line says to let go. Say it first.",
    strap:
      "{itemName}: a foot is still in the {strap} when it is needed {place}, and no line takes it out. Say it first.",
    "handles-late":
      '{itemName}: the set-up names {early} before "handles down", while hands still hold them. Say "handles down" first.',
    "strap-late":
      '{itemName}: the set-up names {early} before "out of the strap", with a foot still in the {strap}. Say that first.',
    "no-time":
      "{itemName}: {seconds} planned where people must {acts}, which alone takes {neededSeconds}. Plan {estimateSeconds}.",
  },
  check({ plan, steps }) {
    return steps.flatMap((step): Found<Message>[] => {
      const { handles, strap, seconds } = step.letGo;
      const found = [...notFree(plan, step), ...freeTooLate(plan, step)];
      const needed = handles > 0 || strap !== null;
      return found.length === 0 && needed && step.seconds < seconds ? [noTime(plan, step)] : found;
    });
  },
});

export const handOrFootNotFreeExamples = (): RuleExamples => ({
  pass: [
    { say: "the handles are put down", plan: toPlank("Handles down, hands on the bars.") },
    { say: "hands that are told to bear weight have let go", plan: toPlank("Hands under the shoulders.", 6) },
    { say: "out of the strap", plan: outOfStrap("Foot out of the strap, stand up.") },
    {
      say: "the pause says to put the handles down",
      plan: examplePlan([
        exampleMove("a", { move: "press" }),
        { id: "p", kind: "pause", seconds: 20, text: "Handles down, shake out." },
        exampleMove("b", { move: "plank", ...setup("To a plank.", 0) }),
      ]),
    },
    {
      say: "hands that bear no weight may hold on a little longer",
      plan: examplePlan([exampleMove("a", { move: "press" }), exampleMove("b", setup("Stand up."))]),
    },
  ],
  fail: [
    { say: "nobody says where the handles go", plan: toPlank("Come to a plank."), expect: ["handles"] },
    { say: "a foot left in its strap", plan: outOfStrap("Stand up."), expect: ["strap"] },
    {
      say: "handles down, after the hands are needed",
      plan: toPlank("Come to a plank, then put the handles down."),
      expect: ["handles-late"],
    },
    {
      say: "out of the strap, after the turn",
      plan: outOfStrap("Face the back, foot out of the strap.", { facing: "back" }),
      expect: ["strap-late"],
    },
    {
      say: "one second to put two handles down",
      plan: toPlank("Handles down, hands on the bars.", 1),
      expect: ["no-time"],
    },
  ],
});

/** What must be let go and no line tells. */
function notFree(plan: Plan, step: SetupStep): Found<Message>[] {
  const { handles, strap } = step.letGo;
  if (handles === 0 && strap === null) return [];
  const untold = (act: "handles-down" | "strap-off"): boolean =>
    changeTold(plan, step).row.missing.some((one) => one.act === act) && !isSaidForSafety(plan, step, act);
  const found: Found<Message>[] = [];
  const items = [step.item.id];
  const name = itemName(plan, step.item);
  if (handles > 0 && untold("handles-down")) {
    const held = handles === 2 ? "both handles" : "a handle";
    const values = { itemName: name, held, place: handPlace(step) };
    found.push({ message: "handles", items, values, level: "look" });
  }
  if (strap !== null && untold("strap-off")) {
    const values = { itemName: name, strap: tagWords(strap), place: footPlace(step) };
    found.push({ message: "strap", items, values });
  }
  return found;
}

const isSaidForSafety = (plan: Plan, step: SetupStep, act: Act["act"]): boolean =>
  (step.item.script ?? []).some(
    (line) => line.kind === "safety" && toldIn(plan, step, line).some((heard) => heard.act.act === act),
  );

/** What is told, but after something that needs it done. */
function freeTooLate(plan: Plan, step: SetupStep): Found<Message>[] {
  const { heard } = changeTold(plan, step);
  const name = itemName(plan, step.item);
  const found = (
    message: Message,
    act: "handles-down" | "strap-off",
    values: object,
    level?: "look",
  ): Found<Message>[] => {
    const early = heard.find((one) => one.verdict === "wrong-order" && one.early?.includes(act));
    if (!early) return [];
    const all = { itemName: name, early: EARLY[early.act.act] ?? "the springs", ...values };
    return [{ message, items: [step.item.id], values: all, ...(level ? { level } : {}) }];
  };
  return [
    ...found("handles-late", "handles-down", {}, "look"),
    ...found("strap-late", "strap-off", { strap: tagWords(step.before?.setup.feet ?? "strap") }),
  ];
}

const EARLY: Readonly<Partial<Record<HeardAct["act"]["act"], string>>> = {
  turn: "the turn",
  station: "the new station",
  position: "the new position",
};

function noTime(plan: Plan, { item, letGo, seconds, estimate }: SetupStep): Found<Message> {
  const acts = [
    ...(letGo.handles > 0 ? [agree(letGo.handles, "put the handle down", "put the handles down")] : []),
    ...(letGo.strap ? ["come out of the strap"] : []),
  ];
  const values = {
    itemName: itemName(plan, item),
    acts,
    seconds,
    neededSeconds: letGo.seconds,
    estimateSeconds: estimate,
  };
  return { message: "no-time", items: [item.id], values, ...(letGo.strap ? {} : { level: "look" as const }) };
}

const handPlace = ({ to }: SetupStep): string => `on the ${tagWords(to.hands)}`;
const footPlace = ({ to }: SetupStep): string => `${to.feet.endsWith("-strap") ? "in" : "on"} the ${tagWords(to.feet)}`;
