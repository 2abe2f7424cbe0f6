import { itemName, sideWords } from "#lib/plan/format.ts";
import type { Plan } from "#lib/plan/schema.ts";
import type { SetupStep } from "#lib/transitions/walk.ts";
import { COMMON_PRACTICE, defineRule } from "../define/define-rule.ts";
import { exampleMove, exampleMoves, examplePlan } from "../define/example-plan.ts";
import { choicesLimit, limits } from "../define/limit-fields.ts";
import type { Found, RuleExamples } from "../define/types.ts";
import { changeList } from "../select/changes.ts";
import {
  saidIn,
  saidInPauses,
  tellsFacing,
  tellsHandles,
  tellsSide,
  tellsSprings,
  tellsStrap,
} from "../select/told.ts";

const CHANGE_KINDS = ["springs", "facing", "side", "handles", "strap"] as const;
export type ChangeKind = (typeof CHANGE_KINDS)[number];
type Message = ChangeKind | "nothing";

const setup = (text: string) => ({ script: [{ kind: "setup" as const, text }] });
const strapped = { ...exampleMoves.squat, feet: "cable-strap" as const, position: "supine" as const };

export const changeNotTold = defineRule({
  id: "change-not-told",
  reads: "change",
  title: "A change that the set-up does not mention",
  why: "If nobody says it, half the room does not do it: they start on the wrong springs, facing the wrong way or on the wrong side.",
  fix: "Name the change in the set-up line, in words or with a live field.",
  level: "look",
  source: COMMON_PRACTICE,
  limits: limits({
    kinds: choicesLimit({
      of: CHANGE_KINDS,
      usual: [...CHANGE_KINDS],
      says: "Changes that a set-up line must mention",
    }),
  }),
  messages: {
    springs: "{itemName}: people {changes}, and no set-up line says so. Name the springs, or put in the live field.",
    facing: "{itemName}: people turn from the {from} to the {to}, and no set-up line says so. Say which way to face.",
    side: "{itemName}: it is the {side} now, and no set-up line says so. Name the side, or put in the live field.",
    handles: "{itemName}: no set-up line mentions the handles ({changes}). Say what the hands do.",
    strap: "{itemName}: no set-up line mentions the strap ({changes}). Say what the foot does.",
    nothing: "{itemName}: no set-up line says what changes ({kinds}). Write one.",
  },
  check({ plan, steps }, { kinds }) {
    return steps.flatMap((step): Found<Message>[] => {
      const untold = untoldChanges(plan, step).filter((kind) => kinds.includes(kind));
      if (untold.length === 0) return [];
      const items = [step.item.id];
      const name = itemName(plan, step.item);
      if (!hasSetupWords(plan, step)) {
        return [{ message: "nothing", items, values: { itemName: name, kinds: untold } }];
      }
      return untold.map((kind) => ({
        message: kind,
        items,
        values: { itemName: name, kinds: [kind], ...valuesOf(plan, step, kind) },
      }));
    });
  },
});

export const changeNotToldExamples = (): RuleExamples => ({ pass: passes(), fail: failures() });

const passes = (): RuleExamples["pass"] => [
  {
    say: "springs by the live field, facing and handles in words",
    plan: examplePlan([
      exampleMove("a"),
      exampleMove("b", {
        move: "press",
        facing: "back",
        springs: { light: 2 },
        ...setup("{springs}, FACE back, grab both handles!"),
      }),
    ]),
  },
  {
    say: "the spring's own name, in the plural",
    plan: examplePlan([exampleMove("a"), exampleMove("b", { springs: { light: 3 }, ...setup("Three lights on.") })]),
  },
  { say: "nothing changes", plan: examplePlan([exampleMove("a"), exampleMove("b", { script: [] })]) },
  {
    say: "naming the other side, which covers the one handle too",
    plan: examplePlan([
      exampleMove("a", { move: "row", side: "right" }),
      exampleMove("b", { move: "row", side: "left", ...setup("Other side.") }),
    ]),
  },
];

const failures = (): RuleExamples["fail"] => [
  {
    say: "springs",
    plan: examplePlan([exampleMove("a"), exampleMove("b", { springs: { light: 2 }, ...setup("Stand tall.") })]),
    expect: ["springs"],
  },
  {
    say: "a long back, which does not say which way to face",
    plan: examplePlan([exampleMove("a"), exampleMove("b", { facing: "back", ...setup("Stand tall, back long.") })]),
    expect: ["facing"],
  },
  {
    say: "the other side",
    plan: examplePlan([
      exampleMove("a", { move: "row", side: "right" }),
      exampleMove("b", { move: "row", side: "left", ...setup("Arms long.") }),
    ]),
    expect: ["side"],
  },
  {
    say: "handles",
    plan: examplePlan([exampleMove("a"), exampleMove("b", { move: "press", ...setup("Kneel, hands at the chest.") })]),
    expect: ["handles"],
  },
  {
    say: "a strap",
    plan: examplePlan([exampleMove("a"), exampleMove("b", { move: "legs", ...setup("Lie down.") })], {
      moves: { ...exampleMoves, legs: strapped },
    }),
    expect: ["strap"],
  },
  {
    say: "no set-up line at all: one finding for everything",
    plan: examplePlan([exampleMove("a"), exampleMove("b", { facing: "back", springs: { light: 2 }, script: [] })]),
    expect: ["nothing"],
  },
];

const hasSetupWords = (plan: Plan, step: SetupStep): boolean => saidIn(plan, step.item, ["setup"]) !== "";

/** What changes into a move without being mentioned in its set-up lines or in a pause before it. */
function untoldChanges(plan: Plan, step: SetupStep): ChangeKind[] {
  const changed = CHANGE_KINDS.filter((kind) => CHANGES[kind](step));
  if (changed.length === 0) return [];
  const words = `${saidInPauses(plan, step)}|${saidIn(plan, step.item, ["setup"])}`;
  const told: Readonly<Record<ChangeKind, boolean>> = {
    springs: changed.includes("springs") && tellsSprings(plan, words),
    facing: tellsFacing(words, step),
    side: tellsSide(words),
    handles: tellsHandles(words, step),
    strap: tellsStrap(words, step),
  };
  return changed.filter((kind) => !told[kind]);
}

/** Where one handle or strap only changes sides, the side is what must be mentioned. */
const CHANGES: Readonly<Record<ChangeKind, (step: SetupStep) => boolean>> = {
  springs: ({ actions }) => actions.carriageHome !== undefined,
  facing: ({ actions }) => actions.quarterTurn !== undefined,
  side: ({ before, item }) =>
    before !== null && (item.side === "left" || item.side === "right") && before.item.side !== item.side,
  handles: ({ before, to }) => before !== null && before.setup.hands !== to.hands && involves(before.setup, to),
  strap: ({ before, to, actions }) =>
    before !== null && before.setup.feet !== to.feet && (actions.strapOn ?? actions.strapOff ?? 0) > 0,
};

const HANDLES: readonly string[] = ["handles", "handles-crossed", "one-handle"];
const involves = (from: SetupStep["to"], to: SetupStep["to"]): boolean =>
  HANDLES.includes(from.hands) || HANDLES.includes(to.hands);

function valuesOf(plan: Plan, step: SetupStep, kind: ChangeKind): Record<string, unknown> {
  switch (kind) {
    case "springs":
      return { changes: changeList(plan, step, ["spring-off", "spring-on"]) };
    case "facing":
      return { from: step.before?.setup.facing ?? "", to: step.to.facing };
    case "side":
      return { side: `${sideWords(step.item.side)} side` };
    case "handles":
      return { changes: changeList(plan, step, ["hands"]) };
    case "strap":
      return { changes: changeList(plan, step, ["feet"]) };
  }
}
