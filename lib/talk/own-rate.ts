/**
 * A coach's own speaking rate, from a passage read aloud between two taps. A plan counts a line as its syllables at that
 * rate and a pause after it, so the pauses between lines are subtracted first; the last pause comes after the second tap.
 */
import { hundredth } from "#lib/numbers/round.ts";
import { plainNumber } from "#lib/plan/format.ts";
import { PASSAGE } from "./passage.ts";
import { syllablesOfText } from "./syllables.ts";

export const PASSAGE_SYLLABLES = PASSAGE.reduce((sum, line) => sum + syllablesOfText(line), 0);
export const PASSAGE_WORDS = PASSAGE.join(" ").split(/\s+/).length;

/**
 * Syllables a second. Outside these limits a tap was a mistake, or the reader was interrupted. English talk runs at 3.3 to
 * 5.9 (a secondary source, poletoparis.com); the margin on both sides is common practice, no source.
 */
const SLOWEST = 2;
const FASTEST = 8.5;
/** Readings that differ by more than this share of the slower one disagree. Common practice, no source. */
const APART = 0.15;

export type RateReading =
  | { readonly ok: true; readonly seconds: number; readonly rate: number; readonly wordsPerMinute: number }
  | { readonly ok: false; readonly why: string };

/** Syllables a second of actual speech, from the seconds between the taps; infinite when the pauses alone take as long. */
function rateOf(seconds: number, pauseSeconds: number): number {
  const speaking = seconds - (PASSAGE.length - 1) * pauseSeconds;
  return speaking > 0 ? PASSAGE_SYLLABLES / speaking : Number.POSITIVE_INFINITY;
}

/** One reading, or a sentence on why it does not count. `seconds`: between the taps; `pauseSeconds`: the plan's. */
export function rateReading(seconds: number, pauseSeconds: number): RateReading {
  const rate = rateOf(seconds, pauseSeconds);
  if (!(rate <= FASTEST)) {
    const why = `${plainNumber(Math.max(0, seconds))} s is too short for ${PASSAGE_WORDS} words. Tap when you begin the first line, and again when you finish the last.`;
    return { ok: false, why };
  }
  if (rate < SLOWEST) {
    const why = `${plainNumber(seconds)} s is too long for ${PASSAGE_WORDS} words. Read the passage again without a break.`;
    return { ok: false, why };
  }
  return { ok: true, seconds, rate, wordsPerMinute: (PASSAGE_WORDS * 60) / seconds };
}

/**
 * The rate of several readings: all syllables over all seconds of speech, so that a slip in one reading counts less.
 * Rounded to a hundredth. Null without a reading.
 */
export function ownRate(readings: readonly { readonly seconds: number }[], pauseSeconds: number): number | null {
  if (readings.length === 0) return null;
  const seconds = readings.reduce((sum, reading) => sum + reading.seconds, 0) / readings.length;
  return hundredth(rateOf(seconds, pauseSeconds));
}

/** True when readings differ so much that another one is needed. */
export function differMuch(readings: readonly { readonly rate: number }[]): boolean {
  const rates = readings.map(({ rate }) => rate);
  return rates.length > 1 && Math.max(...rates) > Math.min(...rates) * (1 + APART);
}
