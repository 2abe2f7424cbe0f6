/** The mender that puts a set-up line into an item's script, and the one that keeps springs on. */

import { readOut } from "#lib/acts/act-words.ts";
import { type SetupAct, setupActs, setupLine } from "#lib/acts/compose.ts";
import { springWords } from "#lib/plan/format.ts";
import { itemById } from "#lib/plan/lookup.ts";
import type { MoveItem, Plan, ScriptLine } from "#lib/plan/schema.ts";
import type { Finding } from "#lib/rules/define/types.ts";
import { avoidableChanges } from "#lib/rules/select/avoidable-changes.ts";
import { IN_PAUSES, setupLinesOf, toldAt } from "#lib/rules/select/told-acts.ts";
import { isToldLate } from "#lib/rules/select/told-order.ts";
import { type SetupStep, walkSetups } from "#lib/transitions/walk.ts";
import type { Remedy, RemedyChange } from "./remedy.ts";

/**
 * The whole change told once, in the order of hands and feet, whatever part of it the finding misses. What the coach wrote
 * stays as it is and where it is: what is missing is said before it, after it, or between two of its lines, as the order
 * asks. Null where there is nothing left to say.
 */
export function saySetup(plan: Plan, finding: Finding): Remedy | null {
  const step = stepOf(plan, finding);
  if (!step) return null;
  const acts = setupActs(plan, step.before?.item, step.item);
  if (isToldLate(plan, step)) return beforeLate(plan, step, acts);
  const changes = SIDES.map((side) => missingLines(plan, step, acts, side)).find(
    (some) => !isToldLate(plan, { ...step, item: withLines(step.item, some) }),
  );
  return changes ? { label: labelOf(plan, step.item, changes), changes } : beforeLate(plan, step, acts);
}

/** On which side of a line that tells both what comes before and what comes after it an act is said, the first that is safe. */
const SIDES = ["after", "before"] as const;
type Side = (typeof SIDES)[number];

/** All of it before lines that tell it in another order; nothing where a pause does, which is said before any line. */
function beforeLate(plan: Plan, step: SetupStep, acts: readonly SetupAct[]): Remedy | null {
  const value = setupLine(plan, step.before?.item, step.item, acts);
  if (!value) return null;
  const changes: LineChange[] = [{ itemId: step.item.id, field: "firstLine", value }];
  if (isToldLate(plan, { ...step, item: withLines(step.item, changes) })) return null;
  return { label: labelOf(plan, step.item, changes), note: OTHER_ORDER, changes };
}

const OTHER_ORDER = "Your lines tell it in another order. Take this one, then delete from yours what it says:";

type LineChange = Extract<RemedyChange, { field: "firstLine" | "setupEnd" | "afterLine" }>;

/** A line for each place at which acts are missing. */
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
 * What is not told, each with how many of the coach's lines come before it: all that tell something earlier. Where one line
 * tells what comes before and what comes after it, it stands on that `side` of it; a posture is then as good as told.
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
    // "Other foot in the strap" tells the side too: nothing has to wait for it.
    const before = acts.slice(0, i).filter((one) => one.act !== "side" || told.get(one) !== next);
    const last = Math.max(IN_PAUSES, ...at(before));
    const isPosture = act.act === "station" || act.act === "position";
    if (isPosture && next <= last) return [];
    return [{ act, slot: side === "before" && next <= last ? Math.max(0, next) : last + 1 }];
  });
}

/** The item with the lines put where they belong, for looking at it again. */
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
  changes.map(({ field, value }) => `${SAY[field]}: ${readOut(plan, item, value.text)}`).join(" ");

/** Any offset and any load the finding could be about: which of them the house minds, the rule has decided. */
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
  const moved = movedMm === 0 ? "" : `, ${Math.abs(movedMm) / 10} cm ${movedMm > 0 ? "further" : "nearer"}`;
  return { label: `Keep ${springWords(plan.equipment, springs)}${moved}`, changes };
}

/** The way into the one move the finding is about, as the plan stands now. */
function stepOf(plan: Plan, finding: Finding): SetupStep | undefined {
  const [id] = finding.items;
  const item = id === undefined || finding.items.length !== 1 ? undefined : itemById(plan, id);
  return item?.kind === "move" ? walkSetups(plan).find((step) => step.item === item) : undefined;
}
