/**
 * Is what a follower shows the coach's own word? It runs on by this device's clock whoever is lost; but a hold, a skip or a
 * re-timing made meanwhile is not known here, and a screen that looks as sure as before would have people load springs by it.
 */
import { secondsWords } from "#lib/plan/format.ts";
import { leaderGoneFor, type RoomLine } from "./line.ts";

/** Nothing heard for so long, though the server says every 1.5 s that it is there: the line is silent. ms, our own choice. */
const SILENT_MS = 4000;
/** A leader's page that is opened again is back within this. ms, our own choice. */
const UNHEARD_MS = 3000;

export type Unconfirmed =
  /** For how long, ms. */
  { readonly why: "not-heard"; readonly forMs: number } | { readonly why: "nobody-leads" };

export interface LastHeard {
  /** ms since the epoch, by this device; null before anything was. */
  readonly heardAt: number | null;
  readonly line: RoomLine | null;
  /** Closed for good: this screen hears nothing any more. */
  readonly refused: boolean;
}
export interface Clocks {
  /** ms since the epoch, by this device. */
  readonly wall: number;
  /** The server's clock, ms; null where it is not known. */
  readonly studioNow: number | null;
}

/** Why what is shown is not confirmed; null while it is. A class that is held is confirmed: the coach's screen is heard. */
export function unconfirmed({ heardAt, line, refused }: LastHeard, { wall, studioNow }: Clocks): Unconfirmed | null {
  const silent = heardAt === null ? Number.POSITIVE_INFINITY : wall - heardAt;
  const gone = line && studioNow !== null ? leaderGoneFor(line, studioNow) : null;
  if (refused || silent >= SILENT_MS) {
    // The leader may have been gone before the line fell silent.
    return { why: "not-heard", forMs: Math.max(silent, gone ?? 0) };
  }
  if (gone !== null && gone >= UNHEARD_MS) return { why: "not-heard", forMs: gone };
  return line && line.leader === null ? { why: "nobody-leads" } : null;
}

/** "Not heard from the coach's screen for 12 s: running by this device's clock." */
export function unconfirmedWords(is: Unconfirmed): string {
  const runs = "running by this device's clock.";
  if (is.why === "nobody-leads") return `Nobody leads now: ${runs}`;
  const seconds = Math.floor(is.forMs / 1000);
  const known = Number.isFinite(seconds) ? ` for ${secondsWords(seconds)}` : "";
  return `Not heard from the coach's screen${known}: ${runs}`;
}
