/** In which line of the script each act of a change is told, for the fix that completes a set-up. */
import type { MoveItem, Plan, ScriptLine } from "#lib/plan/schema.ts";
import type { SetupStep } from "#lib/transitions/walk.ts";
import { type SetupAct, setupActs } from "./compose.ts";
import { changeTold, type HeardAct, IN_PAUSES } from "./plan-acts.ts";
import type { PlannedAct } from "./planned.ts";
import { tellsPlace } from "./start-place.ts";

/** The set-up lines of an item that say anything, in their order. */
export const setupLinesOf = (item: MoveItem): ScriptLine[] =>
  (item.script ?? []).filter(({ kind, text }) => kind === "setup" && text.trim() !== "");

/** Whether a set-up line, or a pause before the move, tells where people start. */
export const isPlaceTold = (step: SetupStep): boolean => placeToldAt(step) !== undefined;

/**
 * For each act that is told, the index among `setupLinesOf` of the first line that tells it in plain words, else of the
 * first that may tell it; `IN_PAUSES` for the pauses before the move.
 */
export function toldAt(plan: Plan, step: SetupStep, acts: readonly SetupAct[]): ReadonlyMap<SetupAct, number> {
  const { heard } = changeTold(plan, step);
  const lines = setupLinesOf(step.item);
  const told = new Map<SetupAct, number>();
  for (const act of acts) {
    const at = act.act === "place" ? placeToldAt(step) : lineOf(heard, act, step.item, lines);
    if (at !== undefined) told.set(act, at);
  }
  return told;
}

function lineOf(heard: readonly HeardAct[], act: PlannedAct, item: MoveItem, lines: ScriptLine[]): number | undefined {
  const telling = heard.filter(({ covers }) => covers.some((one) => isSame(one, act)));
  const plain = telling.find((one) => one.act.act === act.act && !one.implied && one.verdict !== "unsure");
  const found = plain ?? telling[0];
  if (!found) return undefined;
  const line = item.script?.[found.line];
  return line ? lines.indexOf(line) : IN_PAUSES;
}

const isSame = (a: PlannedAct, b: PlannedAct): boolean =>
  a.act === b.act && (!("spring" in a) || ("spring" in b && a.spring === b.spring));

function placeToldAt({ item, pauses }: SetupStep): number | undefined {
  if (pauses.some(({ text }) => tellsPlace(text ?? ""))) return IN_PAUSES;
  const at = setupLinesOf(item).findIndex(({ text }) => tellsPlace(text));
  return at < 0 ? undefined : at;
}

/** What is let go of too early, in words. Null where the order is right. */
export function letGoEarly(plan: Plan, step: SetupStep): string | null {
  const act = actLetGoEarly(plan, step);
  return act && { "handles-down": "handles down", "strap-off": "out of the strap" }[act];
}

/**
 * Letting go of handles or a strap that is told before the carriage is home: handles and cable straps hold an open carriage
 * against its springs. Null where the order is right.
 */
export function actLetGoEarly(plan: Plan, step: SetupStep): "handles-down" | "strap-off" | null {
  const { before, carriage } = step;
  const isPulled = Object.values(before?.setup.springs ?? {}).some((count) => count > 0);
  if (carriage === "home" || !isPulled) return null;
  const holding = changeTold(plan, step).heard.filter(({ early }) => early?.includes("carriage-home"));
  if (holding.some(({ act }) => act.act === "handles-down")) return "handles-down";
  const ofACable = before?.setup.feet === "cable-strap";
  return ofACable && holding.some(({ act }) => act.act === "strap-off") ? "strap-off" : null;
}

/** Whether the lines tell all that the set-up needs, in whatever order. */
export function isAllTold(plan: Plan, step: SetupStep): boolean {
  const acts = setupActs(plan, step.before?.item, step.item);
  const told = toldAt(plan, step, acts);
  return acts.every((act) => told.has(act));
}

/** Whether a set-up tells something before what has to be done first. */
export const isToldLate = (plan: Plan, step: SetupStep): boolean =>
  letGoEarly(plan, step) !== null || changeTold(plan, step).heard.some(({ verdict }) => verdict === "wrong-order");
