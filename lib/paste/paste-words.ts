/**
 * All sentences for people about a pasted list: doubts say what to choose, notes say what was assumed. The limits' own
 * sentences are in `limits.ts`, the labels of choices beside what they choose.
 */
import { agree, countWord, plural, secondsRange, secondsWords, sentenceCase, springWords } from "#lib/plan/format.ts";
import type { Equipment, Spring } from "#lib/plan/schema.ts";

const quoted = (text: string): string => `“${text}”`;

/** What a row is. */
export const KIND_SENTENCES = {
  tooLong: "This row is too long to read. Choose a move for it, or skip it.",
  formula: "A cell holds a formula or an error instead of a value. Choose a move for this row, or skip it.",
  total: "A total or the end of the class: the plan works these out itself.",
  repeats: "This row repeats something, but a plan lists every item. Choose the item, or skip the row.",
  notAfterOneSide:
    "This can only be the other side once the row before it is ready and for one side. Finish that row first.",
  readAsHeading: "It has no time and no move has this name, so it is read as a heading.",
  headingTime: (seconds: number) => `A heading takes no time, so its ${secondsWords(seconds)} are left out.`,
  pauseExtras: "A pause has no side or springs, so they are left out.",
  headingOrMove: (name: string) => `${quoted(name)} looks like a heading but is also a move. Choose which it is.`,
};

/** Which move a row names. */
export const MOVE_SENTENCES = {
  none: "This row names no move. Choose one, or skip it.",
  unknown: (name: string) => `${quoted(name)} is not in the library. Choose a move, or skip the row.`,
  opening: (name: string) =>
    `${quoted(name)} is not in the library. Opening and closing are not items: set their time in the class itself, and skip this row.`,
  several: (name: string) => `${quoted(name)} could be one of several moves. Choose which one.`,
  similar: (name: string) =>
    `${quoted(name)} is not in the library, but one move has a similar name. Choose it, or skip the row.`,
  removed: (id: string) => `${quoted(id)} is no longer in the library. Choose another move, or skip the row.`,
  spelling: (name: string, move: string) => `${quoted(name)} was read as ${move}.`,
  part: (name: string, move: string) => `${quoted(name)} was read as ${move}, the only move with all these words.`,
};

/** Which side an item is for. */
export const SIDE_SENTENCES = {
  notNamed: (move: string) => `${move} is done on one side at a time, but the row names no side. Choose one.`,
  several: (sides: readonly string[]) => `The row names more than one side: ${sides.join("; ")}. Choose one.`,
  impossible: (move: string, bothAtOnce: boolean, named: string) =>
    `${move} is done ${bothAtOnce ? "with both sides at once" : "another way"}, but the row says ${quoted(named)}. Choose a side.`,
  asAlternating: "“Both sides” was read as alternating.",
  asPair: "“Both sides” was read as a left and a right item.",
};

const counted = (count: number): string => sentenceCase(countWord(count));

/** Which springs are on. */
export const SPRING_SENTENCES = {
  unknown: (word: string) => `${quoted(word)} is not a spring of this room. Choose the one it means.`,
  onlyCounted: (count: number) =>
    `${counted(count)} ${agree(count, "spring is", "springs are")} on, but the row does not say which. Choose them.`,
  noneAndSome: (equipment: Equipment, counts: Readonly<Record<string, number>>) =>
    `The row says both “no springs” and ${springWords(equipment, counts)}. Choose one.`,
  orTime: (text: string) => `${quoted(text)} could be a spring or a time. Choose which.`,
  tooMany: (count: number, { label, count: has }: Spring) =>
    `${counted(count)} ${label} asked for, but this room has ${has}.`,
  explained: (word: string, { label }: Spring) => `${quoted(word)} means ${label} in this list.`,
  readAsNone: (text: string) => `${quoted(text)} was read as no springs.`,
  readAsOne: (text: string, each = false) =>
    `${quoted(text)} has no number, so it was read as one${each ? " each" : ""}.`,
  readAs: (text: string, count: number, { label }: Spring) =>
    `${quoted(text)} was read as ${countWord(count)} ${label}.`,
};

/** How long an item lasts. */
export const TIME_SENTENCES = {
  noUnit: (text: string) => `${quoted(text)} has no unit. Is it seconds, minutes or repetitions?`,
  asSeconds: (text: string) => `${quoted(text)} has no unit, so it was read as seconds.`,
  untilNext: (seconds: number) => `${secondsWords(seconds)}: up to the next time on the clock, set-up included.`,
  dashed: (text: string, seconds: number) =>
    `${quoted(`-${text}`)} was read as ${secondsWords(seconds)}, since a length cannot be negative.`,
  impossible: (text: string) => `${quoted(text)} is not a length an item can have. Choose or type another.`,
  long: (text: string) => `${quoted(text)} is long for one item. Choose what was meant.`,
  repetitions: (reps: number) => `${plural(reps, "repetition")}: a plan counts seconds instead. Choose a time.`,
  range: (low: number, high: number) => `From ${secondsRange(low, high)}: a plan needs one length. Choose it.`,
  several: (texts: readonly string[]) => `This row has several times: ${texts.join(", ")}. Choose one.`,
  clockBothSides: (seconds: number) =>
    `The clock gives this row ${secondsWords(seconds)}. Is that for both sides together, or for each?`,
  eachSide: (text: string) => `${quoted(text)} on each side. Is that the time of one side, or of both?`,
  rounds: (text: string, times: number, sided: boolean) =>
    `Does ${quoted(text)} mean ${sided ? "two sides, " : ""}${times === 2 ? "two" : times} rounds, or one item?`,
};

/** The list as a whole. */
export const LIST_SENTENCES = {
  notText:
    "This is not a text file. In the spreadsheet, copy the cells and paste them here, or save them as a CSV file.",
  western: "The file is not UTF-8, so it was read as Western European. Check letters with accents.",
  headings: "The first row was read as column headings.",
  otherColumns: (titles: readonly string[]) =>
    `${titles.map(quoted).join(", ")}: not a column of a class, so its words are left over.`,
  timeColumn: "The time column names no unit, so its numbers were read as seconds.",
  clocked: "The times at the start of the rows count up, so they were read as the clock of the class, not as lengths.",
  numbered: "The first column only numbers the rows, so it was skipped.",
};
