/** What a coach does on the floor, as the event that the log takes: worked out once, so that history never changes. */
import type { Card } from "#lib/card/schema.ts";
import { type EndOnTime, endOnTime, type Retimed } from "./end-on-time.ts";
import { earlierStart, type FloorEvent, type FloorLog, nextStart } from "./log.ts";
import { floorNow, positionAt } from "./now.ts";

/** Acts that need nothing said with them. */
export type PlainAct = "hold" | "resume" | "next" | "back" | "end" | "undo";

/** The event of an act at `at`, ms on the clock of the log. */
export function actEvent(card: Card, log: FloorLog, type: PlainAct, at: number): FloorEvent {
  if (type !== "next" && type !== "back") return { type, at };
  const { steps } = floorNow(card, log);
  const { position } = positionAt(card, log, at);
  return { type, at, to: type === "next" ? nextStart(steps, position) : earlierStart(steps, position) };
}

/** The rest of the class with the times that end it when it is due, worked out for `at`. */
export function endOnTimeAt(card: Card, log: FloorLog, at: number): EndOnTime {
  const { position, startedAt } = positionAt(card, log, at);
  return endOnTime(floorNow(card, log).plan, position, card.clock.total - (at - (startedAt ?? at)) / 1000);
}

/** The event that takes an answer of `endOnTimeAt`. */
export const retimeEvent = (answer: Retimed, at: number): FloorEvent => ({
  type: "retime",
  at,
  changed: answer.changed.map(({ item, to }) => ({ item, to })),
  dropped: answer.dropped,
  closingSeconds: answer.closingSeconds,
});
