/**
 * Whether what a follower shows is confirmed by the coach's screen. A follower that lost contact runs on by its own clock,
 * but it misses holds, skips and re-timings. If it looked as certain as before, people would load springs by it.
 */
import { secondsWords } from "#lib/plan/format.ts";
import { leaderGoneFor, type RoomLine } from "./line.ts";
import { NOBODY_LEADS, notHeardFor } from "./line-words.ts";

/** The line is silent after this long without a message; the server sends one every 1.5 s. ms, our own choice. */
const SILENT_MS = 4000;
/** A leader's page that is reloaded is back within this time. ms, our own choice. */
const UNHEARD_MS = 3000;

export type Unconfirmed =
  /** For how long, ms. */
  { readonly why: "not-heard"; readonly forMs: number } | { readonly why: "nobody-leads" };

export interface LastHeard {
  /** ms since the epoch, by this device; null before the first message. */
  readonly heardAt: number | null;
  readonly line: RoomLine | null;
  /** The connection was closed for good. */
  readonly refused: boolean;
}
export interface Clocks {
  /** ms since the epoch, by this device. */
  readonly wall: number;
  /** The server's clock, ms; null where it is not known. */
  readonly studioNow: number | null;
}

/** Why what is shown is not confirmed; null while it is. Also for a held class: the coach's screen is still heard from. */
export function unconfirmed({ heardAt, line, refused }: LastHeard, { wall, studioNow }: Clocks): Unconfirmed | null {
  const silent = heardAt === null ? Number.POSITIVE_INFINITY : wall - heardAt;
  const gone = line && studioNow !== null ? leaderGoneFor(line, studioNow) : null;
  if (refused || silent >= SILENT_MS) {
    // The leader may have left before the line fell silent.
    return { why: "not-heard", forMs: Math.max(silent, gone ?? 0) };
  }
  if (gone !== null && gone >= UNHEARD_MS) return { why: "not-heard", forMs: gone };
  return line && line.leader === null ? { why: "nobody-leads" } : null;
}

/** "Not heard from the coach's screen for 12 s. Running by this device's clock." */
export function unconfirmedWords(is: Unconfirmed): string {
  if (is.why === "nobody-leads") return NOBODY_LEADS;
  const seconds = Math.floor(is.forMs / 1000);
  return notHeardFor(Number.isFinite(seconds) ? secondsWords(seconds) : null);
}
