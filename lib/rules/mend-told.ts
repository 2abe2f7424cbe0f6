/** The mender that puts a set-up line into an item's script, and the one that keeps springs on. */
import { type SetupAct, setupActs, setupLine } from "#lib/acts/compose.ts";
import { readOut } from "#lib/acts/words.ts";
import { springWords } from "#lib/plan/format.ts";
import { itemById } from "#lib/plan/lookup.ts";
import type { Plan } from "#lib/plan/schema.ts";
import { type Step, walkSetups } from "#lib/transitions/walk.ts";
import type { Mend, MendChange } from "./mend.ts";
import { keptSprings } from "./select/kept-springs.ts";
import { toldActs } from "./select/told-acts.ts";
import { isToldLate } from "./select/told-order.ts";
import type { Finding } from "./types.ts";

/**
 * One set-up for the whole change, in the order of hands and feet, whatever part of it the finding misses. What the coach
 * wrote stays: where it tells the last acts only the first are said before it, where it tells the first ones only the last
 * are said after it, else all of it is said first. Null where there is nothing left to say.
 */
export function saySetup(plan: Plan, finding: Finding): Mend | null {
  const step = stepOf(plan, finding);
  if (!step) return null;
  const acts = setupActs(plan, step.before?.item, step.item);
  if (isToldLate(plan, step)) return beforeLate(plan, step, acts);
  const told = toldActs(plan, step, acts);
  const open = acts.filter((act) => !told.has(act));
  const isFirst = open.every((act, i) => acts[i] === act);
  const isLast = open.every((act, i) => acts[acts.length - open.length + i] === act);
  if (isFirst) return offer(plan, step, open, "firstLine");
  return isLast ? offer(plan, step, open, "setupEnd") : offer(plan, step, acts, "firstLine");
}

/** All of it before lines that tell it in another order; nothing where a pause does, which is said before any line. */
function beforeLate(plan: Plan, step: Step, acts: readonly SetupAct[]): Mend | null {
  const mend = offer(plan, step, acts, "firstLine");
  const line = setupLine(plan, step.before?.item, step.item, acts);
  if (!mend || !line) return null;
  const item = { ...step.item, script: [line, ...(step.item.script ?? [])] };
  return isToldLate(plan, { ...step, item }) ? null : { ...mend, note: OTHER_ORDER };
}

const OTHER_ORDER = "Your lines tell it in another order. Take this one, then delete from yours what it says:";

function offer(plan: Plan, step: Step, acts: readonly SetupAct[], field: "firstLine" | "setupEnd"): Mend | null {
  const value = setupLine(plan, step.before?.item, step.item, acts);
  if (!value) return null;
  const label = `${field === "firstLine" ? "Say first" : "Say after it"}: ${readOut(plan, step.item, value.text)}`;
  return { label, changes: [{ itemId: step.item.id, field, value }] };
}

/** Any offset and any load the finding could be about: which of them the house minds, the rule has decided. */
const ANY = { maxOffsetMm: Number.POSITIVE_INFINITY, maxLoadDifferenceShare: Number.POSITIVE_INFINITY };

export function keepSprings(plan: Plan, finding: Finding): Mend | null {
  const kept = keptSprings(plan, walkSetups(plan), ANY).find(
    ({ items }) => items.length === finding.items.length && items.every(({ id }) => finding.items.includes(id)),
  );
  if (!kept) return null;
  const { springs, offsetMm, movedMm } = kept;
  const changes = kept.items.flatMap(({ id }): MendChange[] => [
    { itemId: id, field: "springs", value: { ...springs } },
    ...(offsetMm === null ? [] : [{ itemId: id, field: "offsetMm" as const, value: offsetMm }]),
  ]);
  const moved = movedMm === 0 ? "" : `, ${Math.abs(movedMm) / 10} cm ${movedMm > 0 ? "further" : "nearer"}`;
  return { label: `Keep ${springWords(plan.equipment, springs)}${moved}`, changes };
}

/** The way into the one move the finding is about, as the plan stands now. */
function stepOf(plan: Plan, finding: Finding): Step | undefined {
  const [id] = finding.items;
  const item = id === undefined || finding.items.length !== 1 ? undefined : itemById(plan, id);
  return item?.kind === "move" ? walkSetups(plan).find((step) => step.item === item) : undefined;
}
