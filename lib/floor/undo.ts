/** One undo for every touch on the floor: what it would undo, in words, and for how long it is offered. */
import type { Card } from "#lib/card/schema.ts";
import { lengthened } from "./extension.ts";
import { FLOOR_SENTENCES } from "./floor-sentences.ts";
import type { FloorEvent, FloorLog } from "./log.ts";
import { floorNow, lastTouch, positionAt, standingLog } from "./now.ts";

/** Long enough to notice a mistake and walk back to the screen (common practice, no source). */
const UNDO_MS = 20_000;
/** Shorter after the end: the studio waits for the class log and the room for its next class. */
const UNDO_END_MS = 10_000;
/** Whoever hit the wrong pedal hits the other one next: within this time after a skip, the *back* key undoes the skip. */
const SLIP_MS = 5000;

export interface Undoable {
  readonly event: FloorEvent;
  /** What would be undone: "skip". */
  readonly what: string;
  /** What the touch did, if the screen does not show it anyway; else null. */
  readonly did: string | null;
}

/** The touch that an undo at `at` would undo: the last in force, while it is recent. Null when there is none. */
export function undoableAt(card: Card, log: FloorLog, at: number): Undoable | null {
  const event = lastTouch(card, log, at);
  if (!event || at - event.at > (isOver(card, log, at) ? UNDO_END_MS : UNDO_MS)) return null;
  return { event, ...wordsOf(card, standingLog(card, log).slice(0, -1), event) };
}

/** True when the last touch was a skip a moment ago. */
export const isFreshSkip = (last: Undoable | null, at: number): boolean =>
  last?.event.type === "next" && at - last.event.at <= SLIP_MS;

function wordsOf(card: Card, before: FloorLog, event: FloorEvent): Pick<Undoable, "what" | "did"> {
  switch (event.type) {
    case "next":
      return { what: "skip", did: null };
    case "resume":
      return { what: "go on", did: null };
    case "seek":
      return { what: "jump ahead", did: null };
    case "retime": {
      const longer = lengthened(card, before, event);
      if (longer) return { what: `${longer.by} s more`, did: longer.words };
      if (event.changed.length + event.dropped.length > 0) {
        return { what: "end on time", did: FLOOR_SENTENCES.newTimes };
      }
      return { what: "end on time", did: FLOOR_SENTENCES.closingIs(Math.round(event.closingSeconds)) };
    }
    default:
      return { what: event.type, did: null };
  }
}

function isOver(card: Card, log: FloorLog, at: number): boolean {
  const { position, ended } = positionAt(card, log, at);
  return ended || position >= floorNow(card, log).clock.total;
}
