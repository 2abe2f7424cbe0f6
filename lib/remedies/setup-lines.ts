/** The fix that puts set-up lines into an item's script, and the one that keeps springs on. */

import { readOut } from "#lib/acts/act-words.ts";
import { firstSetupActs, type SetupAct, setupActs, setupLine } from "#lib/acts/compose.ts";
import { changeTold, IN_PAUSES } from "#lib/acts/plan-acts.ts";
import { isAllTold, isToldLate, setupLinesOf, toldAt } from "#lib/acts/told-lines.ts";
import { STANDARD_FORMATS } from "#lib/formats/formats.ts";
import { distanceWords } from "#lib/formats/units.ts";
import { sentenceCase, spokenSprings } from "#lib/plan/format.ts";
import type { MoveItem, Plan, ScriptLine } from "#lib/plan/schema.ts";
import type { Finding } from "#lib/rules/define/types.ts";
import { avoidableChanges } from "#lib/rules/select/avoidable-changes.ts";
import { type SetupStep, walkSetups } from "#lib/transitions/walk.ts";
import { moveOfFinding } from "./of-finding.ts";
import type { Remedy, RemedyChange } from "./remedy.ts";

/**
 * Completes the set-up of a change, whichever part of it is missing, in the order in which hands and feet can safely do it. The coach's own lines stay as they are: what is missing goes before, after or between them. Null where nothing is
 * missing.
 */
function completeSetup(plan: Plan, step: SetupStep): Remedy | null {
  const acts = setupActs(plan, step.before?.item, step.item);
  if (isToldLate(plan, step)) return beforeLate(plan, step, acts);
  const changes = SIDES.map((side) => missingLines(plan, step, acts, side)).find(
    (some) => !isToldLate(plan, { ...step, item: withLines(step.item, some) }),
  );
  if (changes?.length === 0) return null;
  return changes ? { label: labelOf(plan, step.item, changes), changes } : beforeLate(plan, step, acts);
}

/**
 * What one press writes beside the set-up lines: what is missing of a change, and the whole set-up of a first move that
 * nothing is said of. Null where nothing is missing, be it in another order.
 */
export function setupToWrite(plan: Plan, step: SetupStep): Remedy | null {
  if (step.before) return isAllTold(plan, step) ? null : completeSetup(plan, step);
  if (setupLinesOf(step.item).length > 0 || changeTold(plan, step).heard.length > 0) return null;
  const value = setupLine(plan, undefined, step.item, firstSetupActs(plan, step.item));
  if (!value) return null;
  const changes: LineChange[] = [{ itemId: step.item.id, field: "firstLine", value }];
  return { label: labelOf(plan, step.item, changes), changes };
}

/** `completeSetup` for what a finding is about. */
export function saySetup(plan: Plan, finding: Finding): Remedy | null {
  const step = stepOf(plan, finding);
  return step ? completeSetup(plan, step) : null;
}

/** On which side of a line that tells acts before and after it a missing act may go; the first safe one is taken. */
const SIDES = ["after", "before"] as const;
type Side = (typeof SIDES)[number];

/**
 * The whole change before lines in another order. Null where a pause has the wrong order, since it is heard before any
 * line.
 */
function beforeLate(plan: Plan, step: SetupStep, acts: readonly SetupAct[]): Remedy | null {
  const value = setupLine(plan, step.before?.item, step.item, acts);
  if (!value) return null;
  const changes: LineChange[] = [{ itemId: step.item.id, field: "firstLine", value }];
  if (isToldLate(plan, { ...step, item: withLines(step.item, changes) })) return null;
  return { label: labelOf(plan, step.item, changes), note: OTHER_ORDER, changes };
}

const OTHER_ORDER = "Your lines have another order. Add this line, then delete what it says from yours:";

type LineChange = Extract<RemedyChange, { field: "firstLine" | "setupEnd" | "afterLine" }>;

/** One line for each place where acts are missing. */
function missingLines(plan: Plan, step: SetupStep, acts: readonly SetupAct[], side: Side): LineChange[] {
  const { before, item } = step;
  const lines = setupLinesOf(item);
  const slots = new Map<number, SetupAct[]>();
  for (const { act, slot } of missingActs(toldAt(plan, step, acts), acts, side)) {
    slots.set(slot, [...(slots.get(slot) ?? []), act]);
  }
  return [...slots].flatMap(([slot, some]): LineChange[] => {
    const value = setupLine(plan, before?.item, item, some);
    const after = lines[slot - 1];
    if (!value) return [];
    if (!after) return [{ itemId: item.id, field: "firstLine", value }];
    if (slot === lines.length) return [{ itemId: item.id, field: "setupEnd", value }];
    return [{ itemId: item.id, field: "afterLine", after, value }];
  });
}

/**
 * The acts that are not told, each with how many of the coach's lines come before it: all that tell something earlier.
 * Where one line tells acts before and after it, the act goes on that `side` of the line; a posture then counts as told.
 */
function missingActs(
  told: ReadonlyMap<SetupAct, number>,
  acts: readonly SetupAct[],
  side: Side,
): { readonly act: SetupAct; readonly slot: number }[] {
  return acts.flatMap((act, i) => {
    if (told.has(act)) return [];
    const at = (some: readonly SetupAct[]) => some.flatMap((one) => told.get(one) ?? []);
    const next = Math.min(Number.POSITIVE_INFINITY, ...at(acts.slice(i + 1)));
    // "Other foot in the strap" also tells the side, so nothing has to wait for it.
    const before = acts.slice(0, i).filter((one) => one.act !== "side" || told.get(one) !== next);
    const last = Math.max(IN_PAUSES, ...at(before));
    const isPosture = act.act === "station" || act.act === "position";
    if (isPosture && next <= last) return [];
    return [{ act, slot: side === "before" && next <= last ? Math.max(0, next) : last + 1 }];
  });
}

/** The item with the lines put in, to check their order again. */
function withLines(item: MoveItem, changes: readonly LineChange[]): MoveItem {
  const script = changes.reduce<readonly ScriptLine[]>((lines, change) => {
    const last = lines.findLastIndex(({ kind, text }) => kind === "setup" && text.trim() !== "");
    const at = "after" in change ? lines.indexOf(change.after) : change.field === "setupEnd" ? last : -1;
    return lines.toSpliced(at + 1, 0, change.value);
  }, item.script ?? []);
  return { ...item, script: [...script] };
}

const SAY: Readonly<Record<LineChange["field"], string>> = {
  firstLine: "Say first",
  afterLine: "Say in between",
  setupEnd: "Say after it",
};

const labelOf = (plan: Plan, item: MoveItem, changes: readonly LineChange[]): string =>
  changes.map(({ field, value }) => `${SAY[field]}: ${sentenceCase(readOut(plan, item, value.text))}`).join(" ");

/** No limits here: the rule has already applied the studio's. */
const ANY = { maxOffsetMm: Number.POSITIVE_INFINITY, maxLoadDifferenceShare: Number.POSITIVE_INFINITY };

export function keepSpringsOn(plan: Plan, finding: Finding): Remedy | null {
  const kept = avoidableChanges(plan, walkSetups(plan), ANY).find(
    ({ items }) => items.length === finding.items.length && items.every(({ id }) => finding.items.includes(id)),
  );
  if (!kept) return null;
  const { springs, offsetMm, movedMm } = kept;
  const changes = kept.items.flatMap(({ id }): RemedyChange[] => [
    { itemId: id, field: "springs", value: { ...springs } },
    ...(offsetMm === null ? [] : [{ itemId: id, field: "offsetMm" as const, value: offsetMm }]),
  ]);
  const moved =
    movedMm === 0
      ? ""
      : `, ${distanceWords(Math.abs(movedMm), STANDARD_FORMATS)} ${movedMm > 0 ? "further" : "nearer"}`;
  return { label: `Keep ${spokenSprings(plan.equipment, springs)}${moved}`, changes };
}

/** The change into the one move that the finding is about, as the plan is now. */
function stepOf(plan: Plan, finding: Finding): SetupStep | undefined {
  const item = moveOfFinding(plan, finding);
  return item && walkSetups(plan).find((step) => step.item === item);
}
