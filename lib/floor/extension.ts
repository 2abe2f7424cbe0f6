/** "15 s more": the coach makes the current step longer by one touch, whichever step it is. */

import type { Card } from "#lib/card/schema.ts";
import { tenth } from "#lib/numbers/round.ts";
import { headSeconds, itemById, moveOf } from "#lib/plan/lookup.ts";
import type { Plan } from "#lib/plan/schema.ts";
import { FLOOR_SENTENCES } from "./floor-sentences.ts";
import type { FloorEvent, FloorLog } from "./log.ts";
import { type FloorNow, floorNow, positionAt } from "./now.ts";
import { itemNameById } from "./preview.ts";
import type { Retiming } from "./retimed-plan.ts";
import type { FloorStep } from "./steps.ts";

export interface Extension {
  readonly event: FloorEvent & { readonly type: "retime" };
  readonly phase: FloorStep["phase"];
  /** The item made longer, or being changed into; null for the opening and the closing. */
  readonly item: string | null;
  readonly to: number;
  /** The longest time of the item's range (or its move's) if the new time exceeds it; else null. Seconds. */
  readonly over: number | null;
}

/** Makes the current step `seconds` longer; null before the class has begun and after its end. */
export function extension(card: Card, log: FloorLog, seconds: number, at: number): Extension | null {
  const now = floorNow(card, log);
  const { position, startedAt, ended } = positionAt(card, log, at);
  const step = now.steps.find(({ to }) => position < to);
  if (startedAt === null || ended || !step) return null;
  const { retiming, to, over } = longer(now, step, seconds);
  return { event: { type: "retime", at, ...retiming }, phase: step.phase, item: step.item, to, over };
}

function longer(
  { plan, steps }: FloorNow,
  step: FloorStep,
  seconds: number,
): { retiming: Retiming; to: number; over: number | null } {
  const same: Retiming = { changed: [], dropped: [], closingSeconds: headSeconds(plan, "closingSeconds") };
  const { phase, item } = step;
  const to = lengthOf(plan, step) + seconds;
  if (phase === "closing") return { retiming: { ...same, closingSeconds: to }, to, over: null };
  // A class with only an opening and a closing is one step.
  if (phase === "opening" && steps.length === 1) {
    const openingSeconds = headSeconds(plan, "openingSeconds") + seconds;
    return { retiming: { ...same, openingSeconds }, to: openingSeconds, over: null };
  }
  if (phase === "opening" || item === null) return { retiming: { ...same, openingSeconds: to }, to, over: null };
  if (phase === "change") return { retiming: { ...same, changes: [{ item, to }] }, to, over: null };
  const worked = itemById(plan, item);
  const longest = worked?.kind === "move" ? (worked.range ?? moveOf(plan, worked)?.seconds)?.[1] : undefined;
  const over = longest !== undefined && to > longest ? longest : null;
  return { retiming: { ...same, changed: [{ item, to }] }, to, over };
}

/** Seconds. Work and pauses take the plan's own number, since the clock is rounded to tenths. */
function lengthOf(plan: Plan, { phase, item, from, to }: FloorStep): number {
  const worked = phase === "work" || phase === "pause" ? itemById(plan, item ?? "") : undefined;
  if (worked && worked.kind !== "heading") return worked.seconds;
  return tenth(to - from);
}

/** What such a touch gave, compared with the signed plan. */
export interface Lengthened {
  /** Seconds that the touch added. */
  readonly by: number;
  /** "Plank: 90 s instead of the plan's 60 s." */
  readonly words: string;
}

/** Null when `event` is no such touch. `before`: the log up to it. */
export function lengthened(card: Card, before: FloorLog, event: FloorEvent): Lengthened | null {
  if (event.type !== "retime") return null;
  const made = extension(card, before, 1, event.at);
  if (!made) return null;
  const was = made.to - 1;
  const to = givenTo(event, made);
  const by = tenth((to ?? was) - was);
  if (to === null || by <= 0 || !isAlone(event, made)) return null;
  const signed = signedSeconds(card, made);
  const longest = extension(card, before, by, event.at)?.over ?? null;
  const name = nameOf(floorNow(card, before).plan, made);
  return { by, words: FLOOR_SENTENCES.longer({ name, to, signed, longest }) };
}

/** True when the event changes nothing else. */
function isAlone(
  { changed, dropped, changes = [], openingSeconds, closingSeconds }: Retiming,
  made: Extension,
): boolean {
  const closing = made.phase === "closing";
  const others = changed.length + changes.length + Number(openingSeconds !== undefined);
  return (
    dropped.length === 0 && others === Number(!closing) && (closing || closingSeconds === made.event.closingSeconds)
  );
}

function givenTo(event: Retiming, { phase, item }: Extension): number | null {
  if (phase === "closing") return event.closingSeconds;
  if (phase === "opening") return event.openingSeconds ?? null;
  const list = phase === "change" ? event.changes : event.changed;
  return list?.find((one) => one.item === item)?.to ?? null;
}

/** Seconds in the signed plan; 0 for a change that exists only because of a re-timing. */
function signedSeconds({ plan, clock }: Card, { phase, item }: Extension): number {
  if (phase === "opening" || phase === "closing") return headSeconds(plan, `${phase}Seconds`);
  const row = clock.rows.find((one) => one.item === item);
  if (!row) return 0;
  const seconds = phase === "change" ? row.start - row.transitionFrom : row.end - row.start;
  return tenth(seconds);
}

function nameOf(plan: Plan, { phase, item }: Extension): string {
  if (phase === "opening") return "Opening";
  if (item === null) return "Closing";
  return phase === "change" ? `Change to ${itemNameById(plan, item)}` : itemNameById(plan, item);
}
