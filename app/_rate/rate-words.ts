/** The sentences of the read-aloud check, fetched with its dialog. Pure. */
import { plainNumber, plural } from "#lib/plan/format.ts";

export const howToReadAloudWords = (words: number): string =>
  `Read these ${words} words aloud as you would say them in class. Press the button, or the space bar, when you begin the first line, and again after the last.`;

/** On the button that takes the rate. */
export const takeRateWords = (rate: number): string => `Take ${plainNumber(rate)} syllables a second`;

export const takenRateWords = (rate: number): string =>
  `The talk of this plan is now counted at ${plainNumber(rate)} syllables a second.`;

export const readingWords = (seconds: number, rate: number, wordsPerMinute: number): string =>
  `${plainNumber(seconds)} s: ${plainNumber(rate)} syllables a second, ${Math.round(wordsPerMinute)} words a minute`;

/** How the readings are put together; `apart`: they differ so much that another one should settle it. */
export function readingsWords(count: number, pauseSeconds: number, apart: boolean): string {
  const from =
    count === 1
      ? "From one reading. Read once more: both count together, so a slip in one weighs less."
      : `${plural(count, "reading")} taken together: all syllables divided by all seconds, so a slip in one weighs less.`;
  const pauses = `The plan’s pause of ${plainNumber(pauseSeconds)} s after each line is taken off.`;
  const differ = "They differ by more than a seventh: read once more, or leave out the one that went wrong.";
  return [from, pauses, ...(apart ? [differ] : [])].join(" ");
}
