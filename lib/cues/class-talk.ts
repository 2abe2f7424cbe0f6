/**
 * How much of the whole class is talk, heads-ups and count-ins included. The cue track is the only source, so that band,
 * panel, read-through and command line agree. What they say about it is worded here.
 */
import { percent } from "#lib/formats/percent.ts";
import { clockTime, plainNumber, plural } from "#lib/plan/format.ts";
import type { CueTrack } from "./types.ts";

export interface ClassTalk {
  /** Seconds that are said. */
  readonly seconds: number;
  /** Seconds of the class, opening and closing included. */
  readonly total: number;
  /** `seconds` over `total`, 0..1: a voice never says more than there is time for. */
  readonly share: number;
  /** Lines that are said, and lines set aside because there is no time for them. */
  readonly said: number;
  readonly aside: number;
  /** The largest shortage among the lines set aside, seconds; 0 when there are none. */
  readonly shortBy: number;
}

export function classTalk(track: CueTrack, total: number): ClassTalk {
  return {
    seconds: track.talkSeconds,
    total,
    share: track.talkShare,
    said: track.cues.length,
    aside: track.dropped.length,
    shortBy: Math.max(0, ...track.dropped.map((line) => line.shortBy)),
  };
}

/** "13%". */
export const talkPercent = ({ share }: ClassTalk): string => percent(share);

/** "3:16 of talk in 25:00". */
export const talkInClass = ({ seconds, total }: ClassTalk): string =>
  `${clockTime(seconds)} of talk in ${clockTime(total)}`;

/** "Everything fits."; "2 lines set aside: at least 3.5 s too little time." */
export function asideWords({ aside, shortBy }: ClassTalk): string {
  if (aside === 0) return "Everything fits.";
  return `${plural(aside, "line")} set aside: at least ${plainNumber(shortBy)} s too little time.`;
}
