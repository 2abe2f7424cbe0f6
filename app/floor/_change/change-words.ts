/** The sentences of a change on the floor. Pure. */
import { droppedPartsWords } from "#lib/floor/screen-fit.ts";

export const CHANGE = "change";
export const CHANGE_NOW = "Change now";
export const PERHAPS_CHANGE = "What may change";
export const TO_CHANGE = "s to change";
export const WAS = "was";
export const NOW_ON = "now on";
export const THEN_ON = "then on";
export const COMING_UP = "coming up: say it now";
export const PERHAPS_NEXT = "perhaps next";

/** What the acts say without words is left out unsaid: only the words that are missing are named. */
const NAMED = ["the name of the move", "what was on"];

/** `open`: the font size of the open act, CSS px; `gone`: how many parts gave way. "" when nothing is missing. */
export const changeGaveWords = (open: number, gone: number, distanceM: number): string =>
  droppedPartsWords({ main: Math.ceil(open), gone }, NAMED, distanceM);

/** "one light and one firm", of "now on: one light and one firm". */
export const springsOnWords = (nowOn: string): string => nowOn.replace("now on: ", "");

export const headsUpSecondsWords = (seconds: number): string => `${seconds} s to change`;
