/** One undo for every touch on the floor: what it would take back, in words, and for how long. */
import type { Card } from "#lib/card/schema.ts";
import { lengthened } from "./extension.ts";
import type { FloorEvent, FloorLog } from "./log.ts";
import { floorNow, lastTouch, positionAt, standingLog } from "./now.ts";

/** Long enough to notice a slip and come back to the screen from the other end of the room (common practice, no source). */
const UNDO_MS = 20_000;
/** An end is told to the studio, and the room is let go: those wait no longer than this. */
const UNDO_END_MS = 10_000;
/** A foot that has just gone to the wrong pedal goes to the other: this soon after a skip, *back* by key takes it back. */
const SLIP_MS = 5000;

export interface Undoable {
  readonly event: FloorEvent;
  /** What it takes back: "skip". */
  readonly what: string;
  /** What it did, where that does not show by itself; else null. */
  readonly did: string | null;
}

/** The touch that an undo at `at` takes back: the last that stands, while it is fresh. Null where there is none. */
export function undoableAt(card: Card, log: FloorLog, at: number): Undoable | null {
  const event = lastTouch(card, log, at);
  if (!event || at - event.at > (isOver(card, log, at) ? UNDO_END_MS : UNDO_MS)) return null;
  return { event, ...wordsOf(card, standingLog(card, log).slice(0, -1), event) };
}

/** Was the last touch a skip of just now? */
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
        return { what: "end on time", did: "The rest of the class has new times." };
      }
      return { what: "end on time", did: `The closing gets ${Math.round(event.closingSeconds)} s.` };
    }
    default:
      return { what: event.type, did: null };
  }
}

function isOver(card: Card, log: FloorLog, at: number): boolean {
  const { position, ended } = positionAt(card, log, at);
  return ended || position >= floorNow(card, log).clock.total;
}
