/** Which acts of a change the words before a move tell. */
import type { SetupAct } from "#lib/acts/compose.ts";
import type { Plan } from "#lib/plan/schema.ts";
import type { Step } from "#lib/transitions/walk.ts";
import {
  saidIn,
  saidInPauses,
  tellsCarriageHome,
  tellsFacing,
  tellsHandles,
  tellsPlace,
  tellsSide,
  tellsSprings,
  tellsStrap,
} from "./told.ts";
import { namesPosture } from "./told-order.ts";

/**
 * As the rules see it: a sign of the thing tells all acts of it. Where people go and how they settle is told by the posture
 * that lines speak of anyway: it counts as told once anything of the change is. Only lines of the set-up
 * and pauses before it count: what start and safety lines say comes later.
 */
export function toldActs(plan: Plan, step: Step, acts: readonly SetupAct[]): ReadonlySet<SetupAct> {
  const words = `${saidInPauses(plan, step)}|${saidIn(plan, step.item, ["setup"])}`;
  const tells = (act: SetupAct): boolean => {
    switch (act.act) {
      case "carriage-home":
        return tellsCarriageHome(words, "");
      case "spring-off":
      case "spring-on":
        return tellsSprings(plan, words);
      case "strap-off":
      case "strap-on":
        return tellsStrap(words, step);
      case "handles-down":
      case "handles-up":
      case "handles-cross":
        return tellsHandles(words, step) || tellsOtherHand(words, step);
      case "turn":
        return tellsFacing(words, step);
      case "side":
        return tellsSide(words);
      case "place":
        return tellsPlace(words);
      default:
        return true;
    }
  };
  const told = acts.filter(tells);
  const named = told.some((act) => (act.act === "station" || act.act === "position" ? namesPosture(words, act) : true));
  return new Set(named ? told : []);
}

/** A handle that only goes to the other hand is told by the side. */
const tellsOtherHand = (words: string, { before, to }: Step): boolean =>
  before?.setup.hands === "one-handle" && to.hands === "one-handle" && tellsSide(words);
