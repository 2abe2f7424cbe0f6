/** Where a class that is dragged would be: its time by how far the hand went across, its day by where the hand is. */
import { minuteOfDay } from "#lib/calendar/days.ts";
import type { Moving } from "./preview.ts";
import { clockOfMinute, minuteOfX, xOfMinute } from "./time-axis.ts";
import type { TideSheet } from "./types.ts";

const STEP_MINUTES = 5;

export interface DraggedTo {
  /** The class, and when it began as the drag did. */
  readonly slot: string;
  readonly start: string;
  /** Px that the hand went to the right. */
  readonly dx: number;
  /** Of the hand, in px from the top of the first day. */
  readonly y: number;
}

/** Beyond the first or last day it stays on that. */
export function draggedTo(
  { slot, start, dx, y }: DraggedTo,
  { axis, days }: Pick<TideSheet, "axis" | "days">,
  tops: readonly number[],
): Moving | null {
  const under = tops.findLastIndex((edge) => edge <= y);
  const date = days[Math.min(days.length - 1, Math.max(0, under))]?.date;
  if (date === undefined) return null;
  const minute = minuteOfX(axis, xOfMinute(axis, minuteOfDay(start)) + dx, STEP_MINUTES);
  return { slot, date, start: clockOfMinute(minute) };
}
