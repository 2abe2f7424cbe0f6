/** Acts of a set-up that the plan has otherwise or not at all, with what the plan has in words. */
import { changeTold, type HeardAct } from "#lib/acts/plan-acts.ts";
import type { PlannedAct } from "#lib/acts/planned.ts";
import { countWord, listWords, spokenSprings, tagWords } from "#lib/plan/format.ts";
import type { Plan } from "#lib/plan/schema.ts";
import { handlesHeld } from "#lib/transitions/transitions.ts";
import type { SetupStep } from "#lib/transitions/walk.ts";

interface ActOtherwise {
  readonly heard: HeardAct;
  readonly message: "setup" | "unsure";
  /** To follow "but ..." or "and ...". */
  readonly really: string;
}

/** One for each kind of act in each line: what is said twice in a line is one mistake. */
export function actsOtherwise(plan: Plan, step: SetupStep): ActOtherwise[] {
  const found = new Map<string, ActOtherwise>();
  for (const heard of changeTold(plan, step).heard) {
    const message = messageOf(heard);
    const key = `${heard.line} ${heard.from} ${heard.act.act.startsWith("spring") ? "springs" : heard.act.act}`;
    if (message && !found.has(key)) found.set(key, { heard, message, really: reallyOf(plan, step, heard) });
  }
  return [...found.values()];
}

/** A carriage that comes home without need harms nobody. Words of a pause have no line to change. */
function messageOf({ line, act, verdict }: HeardAct): ActOtherwise["message"] | null {
  if (line < 0 || act.act === "carriage-home") return null;
  if (verdict === "contradicted" || verdict === "not-planned") return "setup";
  return verdict === "unsure" && act.act === "springs-now" && act.springs !== undefined ? "unsure" : null;
}

function reallyOf(plan: Plan, step: SetupStep, { act, of }: HeardAct): string {
  const { to, before } = step;
  switch (act.act) {
    case "spring-on":
    case "spring-off":
    case "springs-now":
      return springsOf(plan, step);
    case "turn":
      return before?.setup.facing === to.facing
        ? `people stay facing the ${to.facing}`
        : `the plan faces the ${to.facing}`;
    case "station":
      return `the plan is on the ${STATION_WORDS[to.station]}`;
    case "position":
      return `the plan has people ${POSITION_WORDS[to.position]}`;
    case "side":
      return to.side === "left" || to.side === "right"
        ? `the plan has the ${to.side} side`
        : "the plan has no one side here";
    case "handles-up":
    case "handles-down":
    case "handles-cross":
      return handlesOf(step);
    case "strap-on":
    case "strap-off":
      return strapOf(step);
    default:
      return changed(plan, step, of);
  }
}

const STATION_WORDS = { front: "front platform", back: "back platform", carriage: "carriage", floor: "floor" };
const POSITION_WORDS = {
  plank: "in a plank",
  quadruped: "on hands and knees",
  kneeling: "kneeling",
  seated: "sitting",
  supine: "on their backs",
  prone: "face down",
  "side-lying": "lying on a side",
  standing: "standing",
  inverted: "with the hips above the head",
};

function springsOf(plan: Plan, { to, actions }: SetupStep): string {
  const words = spokenSprings(plan.equipment, to.springs);
  return actions.carriageHome === undefined ? `the springs stay: ${words}` : `the plan then has ${words}`;
}

function handlesOf({ to }: SetupStep): string {
  const held = handlesHeld(to.hands);
  if (held === 0) return "the plan has no handles in the hands";
  const crossed = to.hands === "handles-crossed" ? ", crossed" : "";
  return `the plan has ${held > 1 ? countWord(held) : "one"} ${held > 1 ? "handles" : "handle"} in the hands${crossed}`;
}

const strapOf = ({ to }: SetupStep): string =>
  to.feet.endsWith("-strap") ? `the plan has the feet in the ${tagWords(to.feet)}` : "the plan has no foot in a strap";

const CHANGED: Readonly<Partial<Record<PlannedAct["act"], string>>> = {
  "spring-on": "the springs",
  "spring-off": "the springs",
  station: "the station",
  turn: "the way to face",
  position: "the position",
  side: "the side",
  "handles-down": "the handles",
  "handles-up": "the handles",
  "handles-cross": "the handles",
  "strap-on": "the strap",
  "strap-off": "the strap",
};

/** What does not stay, where the words say that it does. */
function changed(plan: Plan, step: SetupStep, of: HeardAct["of"]): string {
  if (of === "springs") return springsOf(plan, step);
  if (of === "turn" || of === "side") return reallyOf(plan, step, { act: { act: of } } as HeardAct);
  const { planned } = changeTold(plan, step).row;
  const things = [...new Set(planned.flatMap(({ act }) => CHANGED[act] ?? []))];
  return `the plan changes ${listWords(things)}`;
}
