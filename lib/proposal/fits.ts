/**
 * Which parts of a proposal still fit the plan as it is now, why the others do not, and the plan with those that do. A part
 * that does not fit is never applied, nor is one twice (INV-29).
 */

import { STANDARD_FORMATS } from "#lib/formats/formats.ts";
import { offsetWords } from "#lib/formats/units.ts";
import { secondsWords, sentenceCase, sideWords, springLabel } from "#lib/plan/format.ts";
import { sameData } from "#lib/plan/same-data.ts";
import { type MoveItem, moveItemSchema, type Plan, type PlanItem } from "#lib/plan/schema.ts";
import { blockIds, judgeOrder, withBlockInOrder } from "./block-order.ts";
import { type LineIds, NO_LINE_IDS, type PartOf, type ProposalPart, type ProposedField } from "./parts.ts";
import { judgeLine, type PartVerdict, type ScriptStep, steppedLines } from "./script-steps.ts";

/** What parts are judged by. */
export type ProposalGround = Pick<Plan, "items" | "equipment">;

/** One thing to write; all that a part that fits comes to. */
export type Step =
  | { readonly on: "field"; readonly item: string; readonly field: ProposedField; readonly value: unknown }
  | { readonly on: "spring"; readonly item: string; readonly spring: string; readonly count: number }
  | { readonly on: "script"; readonly item: string; readonly step: ScriptStep }
  | { readonly on: "order"; readonly heading: string | null; readonly ids: readonly string[] };

export interface JudgedPart {
  readonly part: ProposalPart;
  /** `already`: the plan is so without it. `changed`: its ground has changed. */
  readonly state: PartVerdict<Step>["state"];
  /** Undefined unless it fits. */
  readonly step: Step | undefined;
  /** Why it does not fit, in a sentence; null where it does. */
  readonly why: string | null;
}

export function fits(
  plan: ProposalGround,
  parts: readonly ProposalPart[],
  lineIds: LineIds = NO_LINE_IDS,
): JudgedPart[] {
  return parts.map((part) => {
    const verdict = judge(plan, part, lineIds);
    return verdict.state === "fits"
      ? { part, state: "fits", step: verdict.step, why: null }
      : { part, state: verdict.state, step: undefined, why: verdict.why };
  });
}

const OUT = { state: "changed", why: "This item was taken out of the plan." } as const;
const ALREADY = { state: "already", why: "It is like this already." } as const;

function judge(plan: ProposalGround, part: ProposalPart, lineIds: LineIds): PartVerdict<Step> {
  if (part.kind === "order") {
    const verdict = judgeOrder(blockIds(plan, part.heading), part);
    return verdict.state === "fits"
      ? { state: "fits", step: { on: "order", heading: part.heading, ids: verdict.step } }
      : verdict;
  }
  const item = plan.items.find(({ id }) => id === part.item);
  if (!item || item.kind === "heading") return OUT;
  if (part.kind === "field") return judgeField(item, part);
  if (item.kind !== "move")
    return { state: "changed", why: "This item is a pause, which has no springs and no script." };
  if (part.kind === "spring") return judgeSpring(plan, item, part);
  const verdict = judgeLine({ lines: item.script ?? [], ids: lineIds.get(item.id) }, part);
  return verdict.state === "fits"
    ? { state: "fits", step: { on: "script", item: item.id, step: verdict.step } }
    : verdict;
}

function judgeField(item: Exclude<PlanItem, { kind: "heading" }>, part: PartOf<"field">): PartVerdict<Step> {
  const { field, was, becomes } = part;
  if (item.kind === "pause" && field !== "seconds")
    return { state: "changed", why: "This item is a pause, which has only a time." };
  const now = (item as MoveItem)[field] ?? null;
  if (same(field, now, becomes)) return ALREADY;
  if (!same(field, now, was))
    return {
      state: "changed",
      why: wasAndIs(PROPOSED_FIELD_WORDS[field], valueWords(field, was), valueWords(field, now)),
    };
  const isValid =
    item.kind === "pause" ? becomes !== null : moveItemSchema.shape[field].safeParse(becomes ?? undefined).success;
  if (!isValid) return { state: "changed", why: `${sentenceCase(PROPOSED_FIELD_WORDS[field])} cannot be left out.` };
  return { state: "fits", step: { on: "field", item: item.id, field, value: becomes ?? undefined } };
}

/** A start at its usual place is written as 0 or left out. */
const same = (field: ProposedField, a: unknown, b: unknown): boolean =>
  field === "offsetMm" ? (a ?? 0) === (b ?? 0) : sameData(a, b);

function judgeSpring(
  plan: ProposalGround,
  item: MoveItem,
  { spring, was, becomes }: PartOf<"spring">,
): PartVerdict<Step> {
  const now = Object.hasOwn(item.springs, spring) ? (item.springs[spring] ?? 0) : 0;
  if (now === becomes) return ALREADY;
  const label = springLabel(plan.equipment, spring);
  if (now !== was) {
    const says = (n: number) => (n === 0 ? "none" : String(n));
    return { state: "changed", why: wasAndIs(`the number of ${label} springs`, says(was), says(now)) };
  }
  return { state: "fits", step: { on: "spring", item: item.id, spring, count: becomes } };
}

const wasAndIs = (name: string, was: string, now: string): string =>
  `${sentenceCase(name)} was ${was} when this was proposed; it is ${now} now.`;

export const PROPOSED_FIELD_WORDS: Readonly<Record<ProposedField, string>> = {
  seconds: "the time",
  side: "the side",
  offsetMm: "the starting place",
  facing: "the facing",
  transitionSeconds: "the planned change",
};

export function valueWords(field: ProposedField, value: PartOf<"field">["was"]): string {
  switch (field) {
    case "seconds":
      return typeof value === "number" ? secondsWords(value) : "not set";
    case "transitionSeconds":
      return typeof value === "number" ? secondsWords(value) : "as estimated";
    case "offsetMm":
      return typeof value === "number" && value !== 0 ? offsetWords(value, STANDARD_FORMATS) : "the usual one";
    case "side":
      return typeof value === "string" ? sideWords(value as MoveItem["side"]) : "not set";
    case "facing":
      return typeof value === "string" ? value : "as the move";
  }
}

/** The plan with the parts that fit; the same plan where none does. Whatever is not touched stays the same object. */
export function applied<P extends ProposalGround>(
  plan: P,
  parts: readonly ProposalPart[],
  lineIds: LineIds = NO_LINE_IDS,
): P {
  const steps = fits(plan, parts, lineIds).flatMap(({ step }) => step ?? []);
  if (steps.length === 0) return plan;
  const items = plan.items.map((item) => {
    const own = steps.filter((step) => step.on !== "order" && step.item === item.id);
    return own.length === 0 ? item : stepped(item, own);
  });
  const orders = steps.filter((step) => step.on === "order");
  const ordered = orders.reduce(
    (now, { heading, ids }) => withBlockInOrder({ ...plan, items: now }, heading, ids),
    items,
  );
  return { ...plan, items: ordered };
}

function stepped(item: PlanItem, steps: readonly Step[]): PlanItem {
  const next: Record<string, unknown> = { ...item };
  const springs: Record<string, number> = item.kind === "move" ? { ...item.springs } : {};
  for (const step of steps) {
    if (step.on === "field") {
      if (step.value === undefined) delete next[step.field];
      else next[step.field] = step.value;
    } else if (step.on === "spring") {
      if (step.count > 0) springs[step.spring] = step.count;
      else delete springs[step.spring];
    }
  }
  if (item.kind !== "move") return next as PlanItem;
  const script = steppedLines(
    item.script ?? [],
    steps.flatMap((step) => (step.on === "script" ? step.step : [])),
  );
  if (script.length > 0) next.script = script;
  else delete next.script;
  return { ...next, springs } as MoveItem;
}
