/** The class as the line carries it, made of the card that runs and its log. */
import type { Card } from "#lib/card/schema.ts";
import type { FloorLog } from "#lib/floor/log.ts";
import type { LineClass } from "./messages.ts";

/** `log` in ms of whatever clock it is told in. */
export function lineClassOf(card: Card, session: string, log: FloorLog): LineClass {
  const { planId, number, hash, title } = card.edition;
  return { session, edition: { planId, number, hash }, title: title.slice(0, 300), log: movedBy(log, 0) };
}

/** The same log with every moment `ms` later. */
export const movedBy = (log: FloorLog, ms: number): LineClass["log"] =>
  // The line's events are the log's own, only not read-only.
  log.map((event) => ({ ...event, at: event.at + ms }) as LineClass["log"][number]);
