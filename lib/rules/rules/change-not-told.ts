import { actWords } from "#lib/acts/act-words.ts";
import { changeTold, type HeardAct } from "#lib/acts/plan-acts.ts";
import type { PlannedAct } from "#lib/acts/planned.ts";
import { setupLinesOf } from "#lib/acts/told-lines.ts";
import { itemName, sideWords, spokenSprings } from "#lib/plan/format.ts";
import type { Plan } from "#lib/plan/schema.ts";
import type { SetupStep } from "#lib/transitions/walk.ts";
import { COMMON_PRACTICE, defineRule } from "../define/define-rule.ts";
import { exampleMove, exampleMoves, examplePlan } from "../define/example-plan.ts";
import { choicesLimit, limits } from "../define/limit-fields.ts";
import type { Found, RuleExamples } from "../define/types.ts";

const CHANGE_KINDS = ["springs", "facing", "side", "handles", "strap"] as const;
type ChangeKind = (typeof CHANGE_KINDS)[number];
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
      const untold = untoldChanges(plan, step).filter(({ kind }) => kinds.includes(kind));
      if (untold.length === 0) return [];
      const items = [step.item.id];
      const name = itemName(plan, step.item);
      if (setupLinesOf(step.item).length === 0) {
        return [{ message: "nothing", items, values: { itemName: name, kinds: untold.map(({ kind }) => kind) } }];
      }
      return untold.map((one) => ({
        message: one.kind,
        items,
        values: { itemName: name, kinds: [one.kind], ...valuesOf(plan, step, one) },
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

/** The acts of each kind of change. */
const ACTS: Readonly<Record<ChangeKind, readonly PlannedAct["act"][]>> = {
  springs: ["spring-off", "spring-on"],
  facing: ["turn"],
  side: ["side"],
  handles: ["handles-down", "handles-up", "handles-cross"],
  strap: ["strap-off", "strap-on"],
};

interface Untold {
  readonly kind: ChangeKind;
  readonly acts: readonly PlannedAct[];
}

/**
 * What changes into a move without being told before it. What is told otherwise than it is planned is a finding of
 * `says-otherwise`. Where one handle or strap only changes sides, the side is what must be told.
 */
function untoldChanges(plan: Plan, step: SetupStep): Untold[] {
  const { row, heard } = changeTold(plan, step);
  const otherwise = heard.filter(({ verdict }) => verdict === "contradicted" || verdict === "not-planned");
  return CHANGE_KINDS.flatMap((kind): Untold[] => {
    const acts = row.missing.filter(({ act }) => ACTS[kind].includes(act));
    const isOtherwise = otherwise.some((one) => one.act.act !== "carriage-home" && isAbout(kind, one));
    return acts.length === 0 || isOtherwise || onlyChangesSides(kind, step) ? [] : [{ kind, acts }];
  });
}

const STAYING: Readonly<Record<ChangeKind, readonly (string | undefined)[]>> = {
  springs: ["springs", "all"],
  facing: ["turn", "place", "all"],
  side: ["side"],
  handles: ["handles", "all"],
  strap: ["strap", "all"],
};
const isAbout = (kind: ChangeKind, { act, of }: HeardAct): boolean =>
  of === undefined
    ? ACTS[kind].some((one) => one === act.act) || (kind === "springs" && act.act === "springs-now")
    : STAYING[kind].includes(of);

function onlyChangesSides(kind: ChangeKind, { before, to }: SetupStep): boolean {
  if (kind === "handles") return before?.setup.hands === to.hands;
  return kind === "strap" && before?.setup.feet === to.feet;
}

function valuesOf(plan: Plan, step: SetupStep, { kind, acts }: Untold): Record<string, unknown> {
  switch (kind) {
    case "springs":
      return { changes: springChanges(plan, acts) };
    case "facing":
      return { from: step.before?.setup.facing ?? "", to: step.to.facing };
    case "side":
      return { side: `${sideWords(step.item.side)} side` };
    default: {
      const ends = { from: step.before?.setup ?? null, to: step.to };
      return { changes: acts.map((act) => actWords(act, ends)) };
    }
  }
}

/** "Take off one firm", "put on two light". */
function springChanges(plan: Plan, acts: readonly PlannedAct[]): string[] {
  const words = (name: "spring-off" | "spring-on", verb: string): string[] => {
    const counts = Object.fromEntries(acts.flatMap((one) => (one.act === name ? [[one.spring, one.count]] : [])));
    return Object.keys(counts).length === 0 ? [] : [`${verb} ${spokenSprings(plan.equipment, counts)}`];
  };
  return [...words("spring-off", "take off"), ...words("spring-on", "put on")];
}
