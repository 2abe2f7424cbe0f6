/** A change step by step, each with what the words say of it, for a list beside the set-up lines. */
import { changesOf } from "./judge.ts";
import type { Judged } from "./judged.ts";
import type { ChangeTold, HeardAct } from "./plan-acts.ts";
import type { PlannedAct } from "./planned.ts";

export type StepState = "told" | "missing" | "wrong-order" | "contradicted" | "unsure";

interface ActStep {
  readonly act: PlannedAct;
  readonly state: StepState;
  /** The words that tell it, or tell it otherwise; null where nothing does. */
  readonly heard: HeardAct | null;
}

export interface ActSteps {
  /** The planned acts, in order. */
  readonly steps: readonly ActStep[];
  /** What is told and is no step: the plan does not have it, or has it otherwise. */
  readonly besides: readonly HeardAct[];
}

export function stepsOf({ row: { planned }, heard }: ChangeTold): ActSteps {
  const steps = planned.map((act): ActStep => {
    const telling = heard.filter(({ covers }) => covers.includes(act));
    const first = (verdict: HeardAct["verdict"]) => telling.find((one) => one.verdict === verdict);
    const early = first("wrong-order");
    if (early) return { act, state: "wrong-order", heard: early };
    const told = first("told");
    if (told) return { act, state: "told", heard: told };
    const other = heard.find((one) => one.verdict === "contradicted" && isAbout(one, act, planned));
    if (other) return { act, state: "contradicted", heard: other };
    const [perhaps] = telling;
    return { act, state: perhaps ? "unsure" : "missing", heard: perhaps ?? null };
  });
  const shown = new Set(steps.map((step) => step.heard));
  const besides = heard.filter(
    (one) => (one.verdict === "not-planned" || one.verdict === "contradicted") && !shown.has(one),
  );
  return { steps, besides };
}

const KIN: readonly (readonly string[])[] = [
  ["spring-on", "spring-off", "springs-now"],
  ["handles-up", "handles-down", "handles-cross"],
  ["strap-on", "strap-off"],
];

/** Whether words that contradict the plan are about this act: its own kind first, then what is done to the same thing. */
function isAbout({ act: said, of }: Judged, act: PlannedAct, planned: readonly PlannedAct[]): boolean {
  if (of !== undefined) return changesOf(of, { planned }).includes(act);
  const own = planned.filter((one) => isSame(said, one));
  if (own.length > 0) return own.includes(act);
  return KIN.some((kind) => kind.includes(said.act) && kind.includes(act.act));
}

const isSame = (said: Judged["act"], act: PlannedAct): boolean =>
  said.act === act.act && (said.spring === undefined || ("spring" in act && act.spring === said.spring));
