/** What the floor shows at a position of a class. Pure; `now.ts` works out which class and which position. */

import type { ClassClock } from "#lib/clock/clock.ts";
import { calledActs, nowOnWords, type SetupChange, setupChanges } from "#lib/cues/changes.ts";
import { type SpringCount, springCounts } from "#lib/cues/springs.ts";
import type { Cue } from "#lib/cues/types.ts";
import { SAME_MOMENT } from "#lib/numbers/round.ts";
import { moveName } from "#lib/plan/format.ts";
import { headSeconds, isMoveItem } from "#lib/plan/lookup.ts";
import type { ItemSide, Plan, PlanItem } from "#lib/plan/schema.ts";
import { type FloorPosition, totalOf } from "./log.ts";
import { openActAt } from "./open-act.ts";
import { type FloorPhase, type FloorStep, floorSteps } from "./steps.ts";

/** An item as the floor names it: a move, a pause, or the closing. */
export interface FloorItem {
  readonly id: string | null;
  readonly kind: "move" | "pause" | "closing";
  readonly name: string;
  readonly side: ItemSide | null;
  readonly springs: readonly SpringCount[];
  /** What people do to get there from the move before. */
  readonly changes: readonly SetupChange[];
  /** The same as called and shown: also says when the springs stay. Empty unless it is a move. */
  readonly acts: readonly SetupChange[];
  /** "now on: one light", after the change; null unless it is a move. */
  readonly nowOn: string | null;
  /** The springs of the move before; empty for the first, and unless it is a move. */
  readonly was: readonly SpringCount[];
  /** Whole seconds to change into it; 0 without a change. */
  readonly changeSeconds: number;
}

export interface FloorView {
  readonly phase: FloorPhase;
  readonly held: boolean;
  /** The current item, or the one being changed into; null in waiting, opening, closing and done. */
  readonly item: FloorItem | null;
  /** The title of the heading above this item. */
  readonly block: string | null;
  /** Whole seconds to the end of this phase, rounded up: 1 until the very end. */
  readonly secondsLeft: number;
  /** Whole seconds of this phase, rounded up; 0 outside the class. */
  readonly secondsOfPhase: number;
  /** In a change: which of the item's acts is being said, from 0; their number once it is time to check the springs. */
  readonly openAct: number | null;
  /** The line to say now, or the last one of this item; null before the first. */
  readonly line: { readonly text: string; readonly kind: Cue["kind"]; readonly now: boolean } | null;
  readonly next: FloorItem | null;
  /** True when it is time for the "coming up" call. */
  readonly headsUp: boolean;
  /** The number to count aloud, in the last seconds of a move. */
  readonly countIn: number | null;
  /** 0..1 of the class. */
  readonly progress: number;
  /** Seconds of the plan done and left. */
  readonly elapsed: number;
  readonly left: number;
  /** Seconds by which the class will end late: holds and going back add to it, skipping subtracts. Negative when early. */
  readonly lateBy: number;
  /** For "4 of 16", moves and pauses; 0 before the first. */
  readonly number: number;
  readonly of: number;
}

/** What is needed to show a class: a verified card, or one with new times. */
export interface FloorCard {
  readonly plan: Plan;
  readonly clock: ClassClock;
  readonly cues: readonly Cue[];
}
/** A card prepared for many views a second. */
export interface FloorClass {
  readonly card: FloorCard;
  readonly steps: readonly FloorStep[];
  readonly items: ReadonlyMap<string, FloorItem>;
  readonly order: readonly string[];
  readonly blocks: ReadonlyMap<string, string>;
}

const CLOSING: FloorItem = {
  id: null,
  kind: "closing",
  name: "Closing",
  side: null,
  springs: [],
  changes: [],
  acts: [],
  nowOn: null,
  was: [],
  changeSeconds: 0,
};
/** Prepares a class for `viewOf`. */
export function floorClass(card: FloorCard): FloorClass {
  const steps = floorSteps(card);
  const items = new Map<string, FloorItem>();
  const blocks = new Map<string, string>();
  let block: string | undefined;
  for (const [index, item] of card.plan.items.entries()) {
    if (item.kind === "heading") block = item.title;
    else items.set(item.id, floorItem(card.plan, item, index, changeSeconds(steps, item.id)));
    if (block !== undefined) blocks.set(item.id, block);
  }
  return { card, steps, items, order: [...items.keys()], blocks };
}

function changeSeconds(steps: readonly FloorStep[], id: string): number {
  const step = steps.find(({ phase, item }) => phase === "change" && item === id);
  return step ? Math.ceil(step.to - step.from - SAME_MOMENT) : 0;
}

function floorItem(plan: Plan, item: PlanItem, index: number, seconds: number): FloorItem {
  if (item.kind !== "move") {
    const name = (item.kind === "pause" && item.text) || "Pause";
    return { ...CLOSING, id: item.id, kind: "pause", name };
  }
  const before = plan.items.slice(0, index).findLast(isMoveItem);
  const changes = setupChanges(plan, before, item);
  const springs = springCounts(plan, item.springs);
  return {
    id: item.id,
    kind: "move",
    name: moveName(plan, item),
    side: item.side,
    springs,
    changes,
    acts: calledActs(changes, springs),
    nowOn: nowOnWords(plan.equipment, item.springs),
    was: before ? springCounts(plan, before.springs) : [],
    changeSeconds: seconds,
  };
}

/** The view at a position; `lateBy` in seconds, from `latenessAt`. */
export function viewOf(
  cls: FloorClass,
  { startedAt, position, held, ended }: FloorPosition,
  lateBy: number,
): FloorView {
  const total = totalOf(cls.steps);
  const done = ended || position >= total - SAME_MOMENT;
  const step = cls.steps.find((s) => position < s.to - SAME_MOMENT) ?? cls.steps.at(-1);
  const phase = startedAt === null ? "waiting" : done ? "done" : (step?.phase ?? "done");
  const inClass = phase !== "waiting" && phase !== "done";
  const item = inClass && step?.item ? (cls.items.get(step.item) ?? null) : null;
  const secondsLeft = inClass && step ? Math.ceil(step.to - position - SAME_MOMENT) : 0;
  const { plan } = cls.card;
  return {
    phase,
    held: held && inClass,
    item,
    block: item?.id ? (cls.blocks.get(item.id) ?? null) : null,
    secondsLeft,
    secondsOfPhase: inClass && step ? Math.ceil(step.to - step.from - SAME_MOMENT) : 0,
    openAct: phase === "change" && step && item ? openActAt(item.acts, setupCues(cls, step), step, position) : null,
    line: inClass && step ? lineAt(cls, step, position) : null,
    next: phase === "done" ? null : nextOf(cls, inClass ? step : undefined),
    headsUp: phase === "work" && secondsLeft <= headSeconds(plan, "headsUpSeconds"),
    countIn: phase === "work" && secondsLeft <= headSeconds(plan, "countInSeconds") ? secondsLeft : null,
    progress: total > 0 ? position / total : 0,
    elapsed: position,
    left: total - position,
    lateBy: startedAt === null || done ? 0 : lateBy,
    number: item?.id ? cls.order.indexOf(item.id) + 1 : phase === "closing" || phase === "done" ? cls.order.length : 0,
    of: cls.order.length,
  };
}

function nextOf(cls: FloorClass, step: FloorStep | undefined): FloorItem | null {
  if (step?.phase === "closing") return null;
  const index = step?.item ? cls.order.indexOf(step.item) : -1;
  const id = cls.order[index + 1];
  return id === undefined ? CLOSING : (cls.items.get(id) ?? null);
}

/** A set-up line may begin before a short change. */
const setupCues = ({ card }: FloorClass, { item, to }: FloorStep): Cue[] =>
  card.cues.filter((cue) => cue.kind === "setup" && cue.item === item && cue.from < to);

/** The last line begun in this item or its set-up. A line stays until the next one replaces it. */
function lineAt(cls: FloorClass, step: FloorStep, position: number): FloorView["line"] {
  const since =
    cls.steps.find((s) => s.item === step.item && (s.item !== null || s.phase === step.phase))?.from ?? step.from;
  // If the change is short, a set-up line may begin before it.
  const cue = cls.card.cues.findLast(
    (c) =>
      c.from <= position + SAME_MOMENT &&
      (c.from >= since - SAME_MOMENT || (c.item === step.item && step.phase === "change")),
  );
  return cue ? { text: cue.text, kind: cue.kind, now: position < cue.to } : null;
}
