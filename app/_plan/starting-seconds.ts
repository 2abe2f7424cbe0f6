/** How long a new item lasts until its author says otherwise. */
import type { Move } from "#lib/plan/schema.ts";

/** Seconds of a new move when its library entry gives no range (common practice, no source). */
const NEW_MOVE_SECONDS = 60;

/** A minute, held within what the library entry allows. Seconds. */
export function startingSeconds(move: Move): number {
  const [low, high] = move.seconds ?? [NEW_MOVE_SECONDS, NEW_MOVE_SECONDS];
  return Math.min(high, Math.max(low, NEW_MOVE_SECONDS));
}
