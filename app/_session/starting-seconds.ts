/** How long a new item lasts until its author changes it. */
import { cycleSeconds } from "#lib/clock/clock.ts";
import type { Move } from "#lib/plan/schema.ts";

/** Seconds of a new move when its library entry gives no range (common practice, no source). */
const NEW_MOVE_SECONDS = 60;

/** About a minute of whole repetitions, within the bounds of the library entry. Seconds. */
export function startingSeconds(move: Move): number {
  const [low, high] = move.seconds ?? [NEW_MOVE_SECONDS / 2, NEW_MOVE_SECONDS * 2];
  const seconds = Math.min(high, Math.max(low, NEW_MOVE_SECONDS));
  const rep = cycleSeconds(move) ?? 0;
  if (rep <= 0) return seconds;
  const wholes = [Math.floor(seconds / rep), Math.ceil(seconds / rep)].map((count) => Math.round(count * rep));
  const allowed = wholes.filter((time) => time >= Math.max(low, 1) && time <= high);
  return allowed.sort((a, b) => Math.abs(a - seconds) - Math.abs(b - seconds))[0] ?? seconds;
}
