/** What a screen knows of its line. */
import type { RoomLine } from "#lib/line/line.ts";
import type { LineClass, LineRefusal } from "#lib/line/messages.ts";

export interface LinkState {
  readonly contact: "connecting" | "on" | "off" | "refused";
  /** ms since the epoch, by this device: when the line was last heard of. Null before it ever was. */
  readonly heardAt: number | null;
  /** Why it was closed for good, in a sentence. */
  readonly sentence: string | null;
  /** The studio answers and no socket ever opened here: what to do about it. */
  readonly noLive: string | null;
  /** This device's id on the line. */
  readonly you: string | null;
  /** As last heard. */
  readonly line: RoomLine | null;
  /** What the studio last did not do, until the next act. */
  readonly refusal: LineRefusal | null;
  /** Changes when the studio signed or withdrew an edition; null until it is told. */
  readonly cards: string | null;
  /** The class that is led, its times in `classTime`; kept while nobody is heard. */
  readonly followed: LineClass | null;
}

/** Before anything was heard. */
export const UNKNOWN_LINK: LinkState = {
  contact: "connecting",
  heardAt: null,
  sentence: null,
  noLive: null,
  you: null,
  line: null,
  refusal: null,
  cards: null,
  followed: null,
};
