/** The hours across a day's rail, in px: from the month's first class to its last, with the idle hours in between cut out. */
import { minuteOfDay } from "#lib/calendar/days.ts";
import type { SlotValues } from "#lib/month/types.ts";

export interface AxisPiece {
  /** Minutes of the day. */
  readonly from: number;
  readonly to: number;
  readonly x0: number;
  readonly x1: number;
}
export interface TideAxis {
  readonly width: number;
  readonly pieces: readonly AxisPiece[];
  /** Middle of each cut. */
  readonly cuts: readonly number[];
  readonly ticks: readonly { readonly minute: number; readonly x: number; readonly time: string }[];
}

/** An idle stretch this long is cut out. */
const IDLE_MINUTES = 150;
const CUT_WIDTH = 24;
/** Left at both ends, and at the right for the words of the last class. */
const LEFT = 8;
const WORDS_SHARE = 0.28;
const WORDS_MOST = 168;
/** Between two ticks: their words are about 40 px wide. */
const TICK_GAP = 56;
const DAY = 24 * 60;
const EMPTY: readonly Span[] = [{ from: 7 * 60, to: 21 * 60 }];

interface Span {
  readonly from: number;
  readonly to: number;
}

type Timed = Pick<SlotValues, "start" | "minutes">;

/** `wordsRoom`: px kept free at the right end for words; default a share of the width. */
export function timeAxis(
  slots: readonly Timed[],
  width: number,
  wordsRoom = Math.min(WORDS_MOST, width * WORDS_SHARE),
): TideAxis {
  const spans = busySpans(slots);
  const minutes = spans.reduce((sum, { from, to }) => sum + to - from, 0);
  const room = Math.max(1, width - LEFT - wordsRoom - CUT_WIDTH * (spans.length - 1));
  const scale = room / minutes;
  const pieces: AxisPiece[] = [];
  let x = LEFT;
  for (const { from, to } of spans) {
    pieces.push({ from, to, x0: x, x1: x + (to - from) * scale });
    x += (to - from) * scale + CUT_WIDTH;
  }
  const cuts = pieces.slice(1).map(({ x0 }) => x0 - CUT_WIDTH / 2);
  return { width, pieces, cuts, ticks: ticksOf(pieces, width) };
}

/** The stretches in which there are classes, in whole hours, with idle ones of `IDLE_MINUTES` left out. */
function busySpans(slots: readonly Timed[]): readonly Span[] {
  const busy = slots
    .map(({ start, minutes }) => {
      const from = minuteOfDay(start);
      return { from: Math.floor(from / 60) * 60, to: Math.min(DAY, Math.ceil((from + minutes) / 60) * 60) };
    })
    .sort((a, b) => a.from - b.from);
  const spans: Span[] = [];
  for (const span of busy) {
    const last = spans.at(-1);
    if (last && span.from - last.to < IDLE_MINUTES) {
      spans[spans.length - 1] = { from: last.from, to: Math.max(last.to, span.to) };
    } else spans.push(span);
  }
  return spans.length > 0 ? spans : EMPTY;
}

function ticksOf(pieces: readonly AxisPiece[], width: number): TideAxis["ticks"] {
  return pieces.flatMap((piece, i) => {
    const scale = (piece.x1 - piece.x0) / (piece.to - piece.from);
    const step = [60, 120, 180, 240, 360].find((minutes) => minutes * scale >= TICK_GAP) ?? DAY;
    const end = pieces[i + 1]?.x0 ?? width + TICK_GAP / 2;
    const ticks: { minute: number; x: number; time: string }[] = [];
    for (let minute = piece.from; minute <= piece.to; minute += step) {
      const x = piece.x0 + (minute - piece.from) * scale;
      if (end - x >= TICK_GAP) ticks.push({ minute, x, time: clockOfMinute(minute) });
    }
    return ticks;
  });
}

/** Minutes of the day as 'HH:MM'. */
export const clockOfMinute = (minute: number): string =>
  `${String(Math.floor(minute / 60)).padStart(2, "0")}:${String(minute % 60).padStart(2, "0")}`;

/**
 * Where a minute of the day stands. One that was cut out, or lies before the first, stands at the nearest end; after the last
 * it goes on at the same scale as far as the rail does.
 */
export function xOfMinute(axis: TideAxis, minute: number): number {
  const { pieces } = axis;
  const first = pieces[0];
  if (!first || minute <= first.from) return first?.x0 ?? 0;
  for (const [i, piece] of pieces.entries()) {
    if (minute <= piece.to) {
      if (minute >= piece.from)
        return piece.x0 + ((minute - piece.from) / (piece.to - piece.from)) * (piece.x1 - piece.x0);
      const before = pieces[i - 1];
      return before && minute - before.to < piece.from - minute ? before.x1 : piece.x0;
    }
  }
  const last = pieces.at(-1) ?? first;
  return Math.min(axis.width - LEFT, last.x1 + (minute - last.to) * ((last.x1 - last.x0) / (last.to - last.from)));
}

/** The minute of the day at a place, in steps of `step` minutes; beyond the last hour it goes on at the same scale. */
export function minuteOfX(axis: TideAxis, x: number, step: number): number {
  const piece = axis.pieces.find(({ x1 }, i) => x <= x1 + CUT_WIDTH / 2 || i === axis.pieces.length - 1);
  if (!piece) return 0;
  const minute = piece.from + ((x - piece.x0) / (piece.x1 - piece.x0)) * (piece.to - piece.from);
  const whole = Math.round(minute / step) * step;
  return Math.min(DAY - step, Math.max(0, whole));
}
