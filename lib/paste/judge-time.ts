/** How long an item lasts, in seconds, or the doubt about it. */
import { tenth } from "#lib/numbers/round.ts";
import { clockTime, plainNumber, plural, secondsWords } from "#lib/plan/format.ts";
import type { ItemSide, Move } from "#lib/plan/schema.ts";
import type { RowAnswer } from "./answers.ts";
import type { DoubtChoice, PasteDoubt } from "./judged.ts";
import { TIME_SENTENCES } from "./paste-words.ts";
import type { RowReading, RowSide, TimeFound } from "./types.ts";

/**
 * A bare number below `SHORTEST_BARE` is more likely repetitions or minutes; a length above `LONGEST_USUAL` is more
 * likely a time of day (common practice, no source).
 */
const SHORTEST_BARE = 15;
const LONGEST_USUAL = 600;
const LONGEST = 14_400;

export interface TimeJudged {
  readonly seconds?: number;
  readonly starting: boolean;
  readonly doubt?: PasteDoubt;
  readonly notes: readonly string[];
}

export interface TimeQuestion {
  readonly reading: RowReading;
  readonly answer: RowAnswer;
  /** How long it lasts when the row does not say. */
  readonly starting: number;
  /** The shortest length; a pause may have none. */
  readonly least: 0 | 1;
  readonly move?: Move;
  /** The sides the move can be done on, and the one the row names. */
  readonly sides: readonly ItemSide[];
  readonly side: RowSide | undefined;
}

export function judgeTime(q: TimeQuestion): TimeJudged {
  const { reading, answer } = q;
  const settled = (seconds: number, notes: readonly string[] = []): TimeJudged => ({
    seconds: tenth(seconds),
    starting: false,
    notes,
  });
  if (answer.seconds !== undefined) return settled(answer.seconds);
  const lengths = [...new Set(reading.times.map((t) => t.seconds))];
  const [time] = reading.times;
  if (!time)
    return reading.reps === undefined
      ? { seconds: q.starting, starting: true, notes: [] }
      : open(repsDoubt(q, reading.reps));
  if (lengths.length > 1) return open(severalDoubt(reading.times));
  if (time.range) return open(rangeDoubt(time.range));
  if (time.how === "clock" && isTwo(q.side)) return open(clockDoubt(time.seconds));
  if ((time.times ?? 1) > 1) return open(timesDoubt(q, time));
  const say = unusual(time, q.least);
  if (say !== null) return open(doubtOf(say, unusualChoices(q, time)));
  return settled(time.seconds, [...notesOf(time), ...dashNote(time)]);
}

const open = (doubt: PasteDoubt): TimeJudged => ({ starting: false, doubt, notes: [] });
const doubtOf = (say: string, choices: readonly DoubtChoice[]): PasteDoubt => ({ about: "time", say, choices });

const lengthWords = (seconds: number): string => (seconds < 3600 ? secondsWords(seconds) : `${clockTime(seconds)} h`);

/** The choice of one length, where a plan can hold it. */
function lengthChoice(seconds: number, label = lengthWords(seconds)): DoubtChoice[] {
  return seconds >= 1 && seconds <= LONGEST ? [{ label, answer: { row: { seconds: tenth(seconds) } } }] : [];
}

function notesOf(time: TimeFound): string[] {
  if (time.how === "bare") return [TIME_SENTENCES.asSeconds(time.text)];
  return time.how === "clock" ? [TIME_SENTENCES.untilNext(time.seconds)] : [];
}

/**
 * A dash right before the number may have been a minus, but nobody writes a negative length, so it is noted and not
 * asked about.
 */
const dashNote = ({ dashed, text, seconds }: TimeFound): string[] =>
  dashed ? [TIME_SENTENCES.dashed(text, seconds)] : [];

function unusual({ seconds, how, text }: TimeFound, least: 0 | 1): string | null {
  if (seconds < least || seconds > LONGEST) return TIME_SENTENCES.impossible(text);
  if ((how === "bare" || how === "column") && seconds < SHORTEST_BARE) return TIME_SENTENCES.noUnit(text);
  if (seconds > LONGEST_USUAL) return TIME_SENTENCES.long(text);
  return null;
}

function unusualChoices(q: TimeQuestion, { seconds, how }: TimeFound): DoubtChoice[] {
  if (how !== "said" && seconds < SHORTEST_BARE) {
    return [...lengthChoice(seconds), ...lengthChoice(seconds * 60), ...repsChoices(q, seconds)];
  }
  // A spreadsheet turns a minute typed as 1:00 into 1:00:00.
  const asMinutes = seconds >= 3600 && seconds % 60 === 0 ? lengthChoice(seconds / 60) : [];
  return [...asMinutes, ...lengthChoice(seconds)];
}

function repsDoubt(q: TimeQuestion, reps: number): PasteDoubt {
  return doubtOf(TIME_SENTENCES.repetitions(reps), repsChoices(q, reps));
}

function repsChoices({ move, starting }: TimeQuestion, reps: number): DoubtChoice[] {
  const cycle = move ? cycleSeconds(move) : null;
  if (cycle === null) return lengthChoice(starting, `${secondsWords(starting)}, the starting choice`);
  return lengthChoice(
    reps * cycle,
    `${secondsWords(reps * cycle)}: ${plural(reps, "repetition")} of ${plainNumber(cycle)} s`,
  );
}

function cycleSeconds({ tempo }: Move): number | null {
  if ("holdSeconds" in tempo) return null;
  return tempo.outSeconds + (tempo.outHoldSeconds ?? 0) + tempo.backSeconds + (tempo.backHoldSeconds ?? 0);
}

function rangeDoubt([low, high]: readonly [number, number]): PasteDoubt {
  return doubtOf(TIME_SENTENCES.range(low, high), [...lengthChoice(low), ...lengthChoice(high)]);
}

function severalDoubt(times: readonly TimeFound[]): PasteDoubt {
  const lengths = [...new Set(times.map((t) => t.seconds))].slice(0, 4);
  const all = times.reduce((sum, t) => sum + t.seconds, 0);
  return doubtOf(TIME_SENTENCES.several(times.slice(0, 4).map((t) => t.text)), [
    ...lengths.flatMap((seconds) => lengthChoice(seconds)),
    ...lengthChoice(all, `${secondsWords(all)} in all`),
  ]);
}

const isTwo = (side: RowSide | undefined): boolean => side === "left-right" || side === "right-left";

function clockDoubt(seconds: number): PasteDoubt {
  return doubtOf(TIME_SENTENCES.clockBothSides(seconds), [
    ...lengthChoice(seconds / 2, `${secondsWords(seconds / 2)} each side`),
    ...lengthChoice(seconds, `${secondsWords(seconds)} each side`),
  ]);
}

/** "2 x 45 s": two sides, two rounds, or one long item. */
function timesDoubt({ sides, side }: TimeQuestion, { seconds, times = 2, text }: TimeFound): PasteDoubt {
  const each = secondsWords(seconds);
  const whole = secondsWords(seconds * times);
  if (isTwo(side)) {
    return doubtOf(TIME_SENTENCES.eachSide(text), [
      ...lengthChoice(seconds, `${each} each side`),
      ...lengthChoice(seconds * times, `${whole} each side`),
    ]);
  }
  const sided = times === 2 && side === undefined && sides.includes("left");
  const choice = (label: string, row: RowAnswer): DoubtChoice => ({ label, answer: { row } });
  return doubtOf(TIME_SENTENCES.rounds(text, times, sided), [
    ...(sided ? [choice(`Left and right, ${each} each`, { seconds, side: "left-right" })] : []),
    ...lengthChoice(seconds * times, `One item of ${whole}`),
    ...(times <= 4 ? [choice(`${times} items of ${each}`, { seconds, times })] : []),
  ]);
}
