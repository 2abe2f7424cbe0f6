/** A rehearsal in progress as a browser keeps it. */
import type { Card } from "#lib/card/schema.ts";
import type { ClockAnchor } from "./log.ts";
import type { Rehearsing } from "./rehearsal.ts";

/** What a page needs to resume a rehearsal. */
export interface KeptRehearsal {
  readonly card: Card;
  readonly rehearsing: Rehearsing;
  readonly anchor: ClockAnchor;
  readonly sessionId: string;
}
