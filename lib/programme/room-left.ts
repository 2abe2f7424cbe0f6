/** Whether a month has room for more classes: its file holds no more than so many, with those that the pattern gives. */
import { joinSlots, occurrencesOf } from "#lib/month/expand.ts";
import { MOST_SLOTS } from "#lib/month/file/cross-check.ts";
import type { MonthFile, PatternLine } from "#lib/month/types.ts";

/** How many classes there would be with these lines in place of its own. */
const countWith = (file: MonthFile, lines: readonly PatternLine[]): number =>
  joinSlots(
    file.slots,
    lines.map((line) => occurrencesOf(line, file)),
  ).length;

/** How many single classes can still be added; 0 in a month that has more than it may. */
export const roomLeft = (file: MonthFile): number => Math.max(0, MOST_SLOTS - countWith(file, file.pattern ?? []));

/** What is said instead of adding the line, or of putting it in the place of the one with its id; undefined where there is room. */
export function tooManyWithLine(file: MonthFile, line: PatternLine): string | undefined {
  const pattern = file.pattern ?? [];
  const lines = [...pattern.filter(({ id }) => id !== line.id), line];
  const [before, after] = [countWith(file, pattern), countWith(file, lines)];
  return after > MOST_SLOTS && after > before ? tooManyWords(after) : undefined;
}

/** `count`: how many there would be. */
export const tooManyWords = (count: number): string =>
  `A month holds at most ${words(MOST_SLOTS)} classes, and would have ${words(count)}. Nothing was changed.`;

/** What is said of a month that has more than its file holds, as when two people added to it at once; undefined otherwise. */
export function overFullWords(count: number): string | undefined {
  const over = count - MOST_SLOTS;
  if (over <= 0) return undefined;
  const those = over === 1 ? "one" : words(over);
  return `This month has ${words(count)} classes, ${those} more than its file can hold. All are kept. Take ${those} out: until then the month’s file is refused wherever it is read.`;
}

const words = (n: number): string => n.toLocaleString("en-GB");
