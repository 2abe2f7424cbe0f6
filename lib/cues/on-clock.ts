/** Puts placed spans on the clock of the class. */
import { tenth } from "#lib/numbers/round.ts";
import type { PlacedSpan } from "./place-span.ts";
import type { Cue, DroppedLine } from "./types.ts";

/** What is said in a span, and what is not. */
type SaidInSpan = Pick<PlacedSpan, "cues" | "dropped">;

/** A span at its place in the class. Times are whole tenths of a second. */
export interface SpanOnClock {
  /** When it begins, in seconds from the start of the class. */
  readonly origin: number;
  /** In seconds of the class. */
  readonly inClass: PlacedSpan;
  /** In seconds from the span's own start: the same value while it is equal, wherever in the class the span stands. */
  readonly own: SaidInSpan;
}

/** `placed` counts seconds from its own start and is not rounded. `was`: the same span before, if there was one. */
export function onClock(placed: PlacedSpan, origin: number, was: SpanOnClock | undefined): SpanOnClock {
  const dropped = placed.dropped.map((line) => ({ ...line, shortBy: tenth(line.shortBy) }));
  const inClass = { ...placed, dropped, cues: cuesLater(placed.cues, origin) };
  const isAsBefore = was !== undefined && isEqual(was.own, inClass, origin);
  return { origin, inClass, own: isAsBefore ? was.own : { dropped, cues: cuesLater(inClass.cues, -origin) } };
}

export const cuesLater = (cues: readonly Cue[], seconds: number): Cue[] =>
  // Each key named: a spread costs more, and after a changed time most of the class is moved.
  cues.map(({ item, kind, from, to, text, line }) => {
    return { item, kind, from: tenth(from + seconds), to: tenth(to + seconds), text, line };
  });

function isEqual(own: SaidInSpan, inClass: SaidInSpan, origin: number): boolean {
  const isAt = (seconds: number, ofClass: number): boolean => seconds === tenth(ofClass - origin);
  const isCue = (cue: Cue, now: Cue | undefined): boolean =>
    now !== undefined && isAt(cue.from, now.from) && isAt(cue.to, now.to) && isSameLine(cue, now);
  const isDropped = (line: DroppedLine, now: DroppedLine | undefined): boolean =>
    now !== undefined && line.shortBy === now.shortBy && isSameLine(line, now);
  return (
    own.cues.length === inClass.cues.length &&
    own.dropped.length === inClass.dropped.length &&
    own.cues.every((cue, n) => isCue(cue, inClass.cues[n])) &&
    own.dropped.every((line, n) => isDropped(line, inClass.dropped[n]))
  );
}

const isSameLine = (a: Cue | DroppedLine, b: Cue | DroppedLine): boolean =>
  a.item === b.item && a.kind === b.kind && a.line === b.line && a.text === b.text;
