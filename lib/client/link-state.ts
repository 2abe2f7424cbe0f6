/** What a screen knows about its line. */
import type { RoomLine } from "#lib/line/line.ts";
import type { LineClass, LineRefusal } from "#lib/line/messages.ts";

export interface LinkState {
  readonly contact: "connecting" | "on" | "off" | "refused";
  /** The server said that it was stopping for a moment, and is not back yet. */
  readonly stopping: boolean;
  /** When the line was last heard, by this device, in ms since the epoch. Null before the first time. */
  readonly heardAt: number | null;
  /** Why the line was closed for good, in a sentence. */
  readonly sentence: string | null;
  /** What to do when the studio answers but no socket ever opened here; null otherwise. */
  readonly noLive: string | null;
  /** This device's id on the line. */
  readonly you: string | null;
  /** As last heard. */
  readonly line: RoomLine | null;
  /** What the studio last refused, until the next act. */
  readonly refusal: LineRefusal | null;
  /** Changes when the studio signs or withdraws an edition; null until it is known. */
  readonly cards: string | null;
  /** The class that is being led, its times in `classTime`; kept while nobody can be heard. */
  readonly followed: LineClass | null;
}

/** The state before anything has been heard. */
export const UNKNOWN_LINK: LinkState = {
  contact: "connecting",
  stopping: false,
  heardAt: null,
  sentence: null,
  noLive: null,
  you: null,
  line: null,
  refusal: null,
  cards: null,
  followed: null,
};
