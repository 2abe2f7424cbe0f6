/**
 * Reads lengths of time from a text: "60 s", "1:00", "1 min", "1.5 min", "1 min 30", "1'30", "half a minute", "45-60
 * s", "2 x 45 s", "30/30 s", "x45". In seconds. A number without a unit counts only where the caller says so.
 */
import { type RowField, WORD_END, WORD_START } from "./field.ts";
import { FIGURES, NUMBER_WORD, readNumber } from "./numbers.ts";
import type { TimeFound } from "./types.ts";

export interface TimeOptions {
  /** Seconds that a bare number stands for; without it a bare number is not a time. */
  readonly perNumber?: number;
  /** How a bare number is reported: the heading of its column may have named the unit. */
  readonly bare?: TimeFound["how"];
  /** Capitals that are initials of springs, so that "2 M" is not a time. */
  readonly initials: ReadonlySet<string>;
}

interface Part {
  readonly seconds: number;
  readonly end: number;
  readonly how?: TimeFound["how"];
}

const sticky = (source: string): RegExp => new RegExp(source, "yiu");

const SECONDS = `(?:(seconds?|secs?|s)${WORD_END}\\.?|''|["″”])`;
const MINUTES = `(?:(minutes?|mins?|m)${WORD_END}\\.?|['′’](?!['’]))`;
const HALF = "\\s+and\\s+a\\s+half";
const CLOCK = sticky(`(?:(\\d{1,2}):)?(\\d{1,3}):([0-5]\\d)(?![\\d:])(?:\\s*(?:minutes?|mins?|m|h)${WORD_END})?`);
const MIN_SEC = sticky(
  `(\\d{1,3})\\s*(?:(minutes?|mins?|m)(?!\\p{L})\\.?|['′’](?!['’]))\\s*(?:and\\s+)?(\\d{1,2})\\s*(?:${SECONDS}|${WORD_END}(?!\\s*[\\p{L}x×*:]))`,
);
const ONE_MIN = sticky(`(${FIGURES}|${NUMBER_WORD})(${HALF})?[\\s-]*${MINUTES}(${HALF}${WORD_END})?`);
const ONE_SEC = sticky(`(${FIGURES}|${NUMBER_WORD})[\\s-]*${SECONDS}`);
const WORDY = sticky(`(half\\s+a|a|one)(\\s+half)?\\s+minute(\\s+and\\s+a\\s+half)?${WORD_END}`);
const BARE = sticky(`(${FIGURES})(?![\\p{L}\\d:.,%])`);
const RANGE = sticky("\\s*(?:-|–|—|to|or)\\s*");
const SLASH = sticky("\\s*/\\s*");
const FOR = sticky("[x×]\\s*(?=\\d)");
const TIMES_BEFORE = sticky("(\\d)\\s*[x×*]\\s*");
const TIMES_AFTER = sticky(`\\s*[x×*]\\s*(\\d)${WORD_END}`);

function at(pattern: RegExp, text: string, index: number): RegExpExecArray | null {
  pattern.lastIndex = index;
  return pattern.exec(text);
}

/** Takes every length of time out of the field. */
export function takeTimesFrom(field: RowField, options: TimeOptions): TimeFound[] {
  const found: TimeFound[] = [];
  const starts = new RegExp(
    `${WORD_START}(?<!\\d[.,:]|(?<!\\p{L})\\.)[\\p{L}\\d½×]|(?<=^|\\s|\\uFDD0)\\.(?=\\d)`,
    "gu",
  );
  const text = field.left;
  for (let m = starts.exec(text); m !== null; m = starts.exec(text)) {
    const hit = phraseAt(text, m.index, options);
    if (hit === null) continue;
    found.push(hit.time);
    field.take(m.index, hit.end, "time");
    starts.lastIndex = hit.end;
  }
  return found;
}

interface Phrase {
  readonly time: TimeFound;
  readonly end: number;
}

/** One time with what belongs to it: a multiplier, a range, two sides. */
function phraseAt(text: string, index: number, options: TimeOptions): Phrase | null {
  const before = at(TIMES_BEFORE, text, index);
  // "x45" is for 45; a small number after the sign was read as repetitions before.
  const head = before ?? at(FOR, text, index);
  const start = index + (head?.[0].length ?? 0);
  const first = sharedUnit(text, start, options) ?? timeAt(text, start, options);
  if (first === null) return null;
  const make = (end: number, more: Partial<TimeFound>): Phrase => ({
    end,
    time: {
      seconds: first.seconds,
      how: first.how ?? "said",
      text: text.slice(index, end).trim(),
      ...(MINUS.test(text.slice(0, index)) ? { dashed: true as const } : {}),
      ...more,
    },
  });
  const range = after(RANGE, text, first, options);
  if (range && !before)
    return make(range.end, {
      range: ends(first.seconds, range.seconds),
      seconds: Math.min(first.seconds, range.seconds),
    });
  const slash = after(SLASH, text, first, options);
  if (slash && slash.seconds === first.seconds) return make(slash.end, { times: 2 });
  const times = at(TIMES_AFTER, text, first.end);
  if (before) return make(first.end, { times: Number(before[1]) });
  return times ? make(first.end + times[0].length, { times: Number(times[1]) }) : make(first.end, {});
}

/** A dash right before the number, with no word right before the dash: "Plank -30 s", not "Plank-30 s". */
const MINUS = /(?:^|\s)[-−]$/u;

const ends = (a: number, b: number): readonly [number, number] => [Math.min(a, b), Math.max(a, b)];

function after(joint: RegExp, text: string, first: Part, options: TimeOptions): Part | null {
  const between = at(joint, text, first.end);
  return between && timeAt(text, first.end + between[0].length, options);
}

/** "45" of "45-60 s" or "30/30 s": a number that takes the unit of the next one. */
function sharedUnit(text: string, index: number, options: TimeOptions): Part | null {
  const figures = at(BARE, text, index);
  if (!figures) return null;
  const end = index + figures[0].length;
  const joint = at(RANGE, text, end) ?? at(SLASH, text, end);
  const next = joint && timeAt(text, end + joint[0].length, { initials: options.initials });
  if (!joint || !next) return null;
  const number = new RegExp(`^${FIGURES}`, "u").exec(text.slice(end + joint[0].length))?.[0] ?? "";
  const per = next.seconds / readNumber(number);
  return per === 1 || per === 60 ? { seconds: readNumber(figures[0]) * per, end } : null;
}

function timeAt(text: string, index: number, options: TimeOptions): Part | null {
  return clockAt(text, index) ?? wordyAt(text, index) ?? unitAt(text, index, options) ?? bareAt(text, index, options);
}

function clockAt(text: string, index: number): Part | null {
  const m = at(CLOCK, text, index);
  if (!m) return null;
  const [hours, minutes, seconds] = [m[1], m[2], m[3]].map((part) => Number(part ?? 0));
  return { seconds: (hours ?? 0) * 3600 + (minutes ?? 0) * 60 + (seconds ?? 0), end: index + m[0].length };
}

function unitAt(text: string, index: number, options: TimeOptions): Part | null {
  const both = at(MIN_SEC, text, index);
  if (both && Number(both[3]) < 60 && (both[3]?.length === 2 || /\D$/.test(both[0].trim()))) {
    return { seconds: Number(both[1]) * 60 + Number(both[3]), end: index + both[0].length };
  }
  const minutes = at(ONE_MIN, text, index);
  if (minutes && !isSpring(minutes, minutes[3], options)) {
    const n = readNumber(minutes[1] ?? "") + (minutes[2] || minutes[4] ? 0.5 : 0);
    return { seconds: n * 60, end: index + minutes[0].length };
  }
  const seconds = at(ONE_SEC, text, index);
  if (!seconds || isSpring(seconds, seconds[2], options)) return null;
  return { seconds: readNumber(seconds[1] ?? ""), end: index + seconds[0].length };
}

/** "2 M" where M is the initial of a spring: small numbers with a capital are left to the spring reader. */
function isSpring(match: RegExpExecArray, unit: string | undefined, { initials }: TimeOptions): boolean {
  return unit !== undefined && initials.has(unit) && readNumber(match[1] ?? "") < 10;
}

function wordyAt(text: string, index: number): Part | null {
  const m = at(WORDY, text, index);
  if (!m) return null;
  const half = /^half/i.test(m[1] ?? "") || m[2] !== undefined;
  return { seconds: (half ? 30 : 60) + (m[3] ? 30 : 0), end: index + m[0].length };
}

function bareAt(text: string, index: number, { perNumber, bare = "bare" }: TimeOptions): Part | null {
  const m = perNumber === undefined ? null : at(BARE, text, index);
  if (!m || perNumber === undefined) return null;
  return { seconds: readNumber(m[1] ?? "") * perNumber, end: index + m[0].length, how: bare };
}
