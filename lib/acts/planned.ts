/** What a change asks people to do, in the order in which hands and feet can safely do it. */
import { own } from "#lib/plan/lookup.ts";
import type { Facing, Move, MoveItem, Plan } from "#lib/plan/schema.ts";
import { actionsBetween, type Setup, setupOf } from "#lib/transitions/transitions.ts";

/** One act as the plan file's format writes it; `spring` is the id of a spring. */
export type PlannedAct =
  | { readonly act: "carriage-home" | "strap-off" | "strap-on" | "handles-cross" }
  | { readonly act: "handles-down" | "handles-up"; readonly count: number }
  | { readonly act: "spring-off" | "spring-on"; readonly spring: string; readonly count: number }
  | { readonly act: "station"; readonly station: Move["station"] }
  | { readonly act: "turn"; readonly facing: Facing }
  | { readonly act: "position"; readonly position: Move["position"] }
  | { readonly act: "side"; readonly side: "left" | "right" };

/**
 * Carriage home, handles and straps let go, springs (in the order of the equipment), station, turn, position, side, then
 * the handles and straps of the next move. Empty for the first move (`before` undefined) and where a move is not known.
 */
export function plannedActs(plan: Plan, before: MoveItem | undefined, after: MoveItem): PlannedAct[] {
  const from = before ? setupOf(plan, before) : null;
  const to = setupOf(plan, after);
  return from && to ? actsInto(plan, from, to) : [];
}

/** The same between two set-ups; from null, everything that the first move needs. */
export function actsInto(plan: Plan, from: Setup | null, to: Setup): PlannedAct[] {
  const was: Setup = from ?? { ...to, springs: {}, hands: "free", feet: "free", side: "both" };
  const actions = actionsBetween(was, to);
  const once = (act: "carriage-home" | "strap-off" | "strap-on" | "handles-cross", count = 0): PlannedAct[] =>
    count > 0 ? [{ act }] : [];
  const counted = (act: "handles-down" | "handles-up", count = 0): PlannedAct[] => (count > 0 ? [{ act, count }] : []);
  return [
    ...once("carriage-home", actions.carriageHome),
    ...once("strap-off", actions.strapOff),
    ...counted("handles-down", actions.handleDown),
    ...springActs(plan, was, to),
    ...placeActs(from, to),
    ...once("handles-cross", actions.handlesCross),
    ...counted("handles-up", actions.handleUp),
    ...once("strap-on", actions.strapOn),
  ];
}

function springActs(plan: Plan, from: Setup, to: Setup): PlannedAct[] {
  const known = plan.equipment.springs.map(({ id }) => id);
  const strange = [...Object.keys(from.springs), ...Object.keys(to.springs)].filter((id) => !known.includes(id)).sort();
  return [...new Set([...known, ...strange])].flatMap((spring): PlannedAct[] => {
    const more = (own(to.springs, spring) ?? 0) - (own(from.springs, spring) ?? 0);
    return more === 0 ? [] : [{ act: more > 0 ? "spring-on" : "spring-off", spring, count: Math.abs(more) }];
  });
}

/** A side is named wherever it differs from the one before, whatever the move was. */
function placeActs(from: Setup | null, to: Setup): PlannedAct[] {
  const acts: PlannedAct[] = [];
  if (from?.station !== to.station) acts.push({ act: "station", station: to.station });
  if (from?.facing !== to.facing) acts.push({ act: "turn", facing: to.facing });
  if (from?.position !== to.position) acts.push({ act: "position", position: to.position });
  if ((to.side === "left" || to.side === "right") && from?.side !== to.side) acts.push({ act: "side", side: to.side });
  return acts;
}
