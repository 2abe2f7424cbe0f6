/** Words for items: their names, what a change asks for, facings, and the note beside every caution. */
import { plainNumber, secondsWords } from "#lib/plan/format.ts";
import { ACTIONS, type Action, type Facing, type Plan } from "#lib/plan/schema.ts";
import { slowestFactor } from "#lib/transitions/slowest.ts";
import { actionSeconds } from "#lib/transitions/transitions.ts";

export { bareName as nameOf } from "#lib/plan/format.ts";

const ACTION_WORDS: Readonly<Record<Action, string>> = {
  springOn: "spring on",
  springOff: "spring off",
  carriageHome: "carriage home",
  quarterTurn: "quarter turn",
  positionChange: "change of position",
  stationChange: "change of station",
  handleUp: "handle up",
  handleDown: "handle down",
  handlesCross: "handles crossed",
  strapOn: "strap on",
  strapOff: "strap off",
  gripChange: "change of grip",
  sideChange: "change of side",
};

/** "carriage home, 2 × spring off"; "" when nothing changes. */
export function actionsWords(actions: Readonly<Partial<Record<Action, number>>>): string {
  const words = ACTIONS.flatMap((action) => {
    const n = actions[action] ?? 0;
    if (n <= 0) return [];
    return [n === 1 ? ACTION_WORDS[action] : `${n} × ${ACTION_WORDS[action]}`];
  });
  return words.join(", ");
}

/** What the estimate is made of: "2 s to begin with, carriage home 2 s, × 1.23 for the slowest of 10, rounded up". */
export function estimateWords(plan: Plan, actions: Readonly<Partial<Record<Action, number>>>): string {
  const parts = ACTIONS.flatMap((action) => {
    const n = actions[action] ?? 0;
    return n <= 0 ? [] : [`${actionsWords({ [action]: n })} ${plainNumber(n * actionSeconds(plan, action))} s`];
  });
  const said = [`${plainNumber(actionSeconds(plan, "base"))} s to begin with`, ...parts].join(", ");
  const factor = slowestFactor(plan);
  const slowest = factor === 1 ? "" : `, × ${factor.toFixed(2)} for the slowest of ${plan.people}`;
  return `${said}${slowest}, rounded up`;
}

/** How long a change takes, apart: "4 s to do, 6 s to tell"; "" when it takes no time. */
export function doTellWords({ estimate, telling }: { readonly estimate: number; readonly telling: number }): string {
  const parts = [estimate > 0 && `${secondsWords(estimate)} to do`, telling > 0 && `${secondsWords(telling)} to tell`];
  return parts.filter(Boolean).join(", ");
}

export const FACING_WORDS: Readonly<Record<Facing, string>> = {
  front: "facing front",
  back: "facing back",
  left: "facing left",
  right: "facing right",
};

/** The list in the class's panel from which items can be put back. */
export const TAKEN_OUT_LIST = "Taken out of the plan";

/** Stands wherever a caution is shown. */
export const CAUTION_NOTE =
  "General guidance: defer to the participant's clinician, the machine maker's manual and local rules.";
