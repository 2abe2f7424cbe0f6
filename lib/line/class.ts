/** The class as it goes over the line, made from the running card and its log. */
import type { Card } from "#lib/card/schema.ts";
import type { FloorLog } from "#lib/floor/log.ts";
import type { LineClass } from "./messages.ts";

/** `log`: ms on the clock that the receiver expects. */
export function lineClassOf(card: Card, session: string, log: FloorLog): LineClass {
  const { planId, number, hash, title } = card.edition;
  return { session, edition: { planId, number, hash }, title: title.slice(0, 300), log: movedBy(log, 0) };
}

/** The same log with every time `ms` later. */
export const movedBy = (log: FloorLog, ms: number): LineClass["log"] =>
  // Same shape; the schema's type is only not read-only.
  log.map((event) => ({ ...event, at: event.at + ms }) as LineClass["log"][number]);
