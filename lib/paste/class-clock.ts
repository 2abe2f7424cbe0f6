/** Recognises times at the start of rows that count up: they are the clock of the class, not the length of a move. */

export interface ClockMark {
  /** Seconds from the start of the class. */
  readonly start: number;
  /** Where the row gives an end: "0:00-1:00". */
  readonly end?: number;
  /** UTF-16 units it occupies at the start of the text. */
  readonly length: number;
}

const TIME = "(?:(\\d{1,2}):)?(\\d{1,3}):([0-5]\\d)";
const HEAD = new RegExp(`^\\s*@?${TIME}(?:\\s*(?:-|–|—|to)\\s*${TIME})?(?![\\d:])(?!\\s*(?:min|m\\b|s\\b|sec))`, "i");
/** With fewer rows than this, nothing can be concluded. */
const ENOUGH = 3;

/** The clock at the start of a text; null where there is none. */
export function clockMark(text: string): ClockMark | null {
  const m = HEAD.exec(text);
  if (!m) return null;
  const at = (i: number) => Number(m[i] ?? 0) * 3600 + Number(m[i + 1] ?? 0) * 60 + Number(m[i + 2] ?? 0);
  return { start: at(1), ...(m[5] === undefined ? {} : { end: at(4) }), length: m[0].length };
}

/** Whether the marks count up: at least three, in at least six of ten rows, each later than the one before. */
export function countsUp(marks: readonly (ClockMark | null)[]): boolean {
  const found = marks.filter((m) => m !== null);
  if (found.length < ENOUGH || found.length < marks.length * 0.6) return false;
  return found.every((m, i) => i === 0 || m.start > (found[i - 1]?.start ?? 0));
}

/** Whether first cells number the rows: 1, 2, 3 ... in at least eight of ten rows. */
export function areNumbers(firstCells: readonly string[]): boolean {
  const numbers = firstCells
    .filter((cell) => /^\d{1,3}[.)]?$/.test(cell.trim()))
    .map((cell) => Number.parseInt(cell, 10));
  if (numbers.length < ENOUGH || numbers.length < firstCells.length * 0.8) return false;
  return numbers.every((n, i) => n === (numbers[0] ?? 0) + i) && (numbers[0] ?? 9) <= 1;
}
