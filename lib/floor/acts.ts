/** What a coach does on the floor, as the event that the log takes: worked out once, so that history never changes. */
import type { Card } from "#lib/card/schema.ts";
import { headSeconds, moveOf } from "#lib/plan/lookup.ts";
import { type EndOnTime, endOnTime } from "./end-on-time.ts";
import { earlierStart, type FloorEvent, type FloorLog, nextStart } from "./log.ts";
import { floorNow, positionAt } from "./now.ts";

/** Acts that need nothing said with them. */
export type PlainAct = "hold" | "resume" | "next" | "back" | "end" | "undo-retime";

/** The event of an act at `at`, ms on the clock of the log. */
export function actEvent(card: Card, log: FloorLog, type: PlainAct, at: number): FloorEvent {
  if (type !== "next" && type !== "back") return { type, at };
  const { steps } = floorNow(card, log);
  const { position } = positionAt(card, log, at);
  return { type, at, to: type === "next" ? nextStart(steps, position) : earlierStart(steps, position) };
}

export interface Extension {
  readonly event: FloorEvent & { readonly type: "retime" };
  /** The item made longer; null for the closing. */
  readonly item: string | null;
  readonly to: number;
  /** The longest the item may be by its own range or its move's, where that is less than it now gets; else null. Seconds. */
  readonly over: number | null;
}

/** What is going on gets `seconds` more; null in the opening and in a change, which are held instead. */
export function extension(card: Card, log: FloorLog, seconds: number, at: number): Extension | null {
  const { plan, steps } = floorNow(card, log);
  const { position, startedAt, ended } = positionAt(card, log, at);
  const step = steps.find(({ to }) => position < to);
  if (startedAt === null || ended || !step) return null;
  const closing = headSeconds(plan, "closingSeconds");
  if (step.phase === "closing") {
    const to = closing + seconds;
    return { event: { type: "retime", at, changed: [], dropped: [], closingSeconds: to }, item: null, to, over: null };
  }
  const item = plan.items.find(({ id }) => id === step.item);
  if ((step.phase !== "work" && step.phase !== "pause") || !item || item.kind === "heading") return null;
  const to = item.seconds + seconds;
  const longest = item.kind === "move" ? (item.range ?? moveOf(plan, item)?.seconds)?.[1] : undefined;
  const changed = [{ item: item.id, to }];
  const over = longest !== undefined && to > longest ? longest : null;
  return { event: { type: "retime", at, changed, dropped: [], closingSeconds: closing }, item: item.id, to, over };
}

/** The rest of the class with the times that end it when it is due, worked out for `at`. */
export function endOnTimeAt(card: Card, log: FloorLog, at: number): EndOnTime {
  const { position, startedAt } = positionAt(card, log, at);
  return endOnTime(floorNow(card, log).plan, position, card.clock.total - (at - (startedAt ?? at)) / 1000);
}

/** The event that takes an answer of `endOnTimeAt`. */
export const retimeEvent = (answer: EndOnTime & { readonly possible: true }, at: number): FloorEvent => ({
  type: "retime",
  at,
  changed: answer.changed.map(({ item, to }) => ({ item, to })),
  dropped: answer.dropped,
  closingSeconds: answer.closingSeconds,
});
