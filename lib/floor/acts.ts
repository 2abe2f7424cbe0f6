/** What a coach does on the floor, as events for the log. Each is worked out once, so later code cannot change history. */
import type { Card } from "#lib/card/schema.ts";
import { type EndOnTime, endOnTime, type Retimed } from "./end-on-time.ts";
import { earlierStart, type FloorEvent, type FloorLog, nextStart } from "./log.ts";
import { floorNow, positionAt } from "./now.ts";

/** Acts that need no further data. */
export type PlainAct = "hold" | "resume" | "next" | "back" | "end" | "undo";

/** The event of an act at `at`, ms on the clock of the log. */
export function actEvent(card: Card, log: FloorLog, type: PlainAct, at: number): FloorEvent {
  if (type !== "next" && type !== "back") return { type, at };
  const { steps } = floorNow(card, log);
  const { position } = positionAt(card, log, at);
  return { type, at, to: type === "next" ? nextStart(steps, position) : earlierStart(steps, position) };
}

/** New times for the rest of the class, worked out at `at`, that end it when it is due. */
export function endOnTimeAt(card: Card, log: FloorLog, at: number): EndOnTime {
  const { position, startedAt } = positionAt(card, log, at);
  return endOnTime(floorNow(card, log).plan, position, card.clock.total - (at - (startedAt ?? at)) / 1000);
}

/** The event that applies an answer of `endOnTimeAt`. */
export const retimeEvent = (answer: Retimed, at: number): FloorEvent => ({
  type: "retime",
  at,
  changed: answer.changed.map(({ item, to }) => ({ item, to })),
  dropped: answer.dropped,
  closingSeconds: answer.closingSeconds,
});
