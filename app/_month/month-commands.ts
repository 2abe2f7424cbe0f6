/** The keys between the days of a month. */
import { type CommandAt, type CommandTable, keyParts } from "#app/_parts/commands/command.ts";

const DAY_BESIDE = "the day before or after";
const WEEK_BESIDE = "the same day of the week before or after";
const DAY_AT_END = "the first or the last day";

export const MONTH_COMMANDS = {
  places: { days: { title: "In the month" } },
  commands: {
    "day-before": { keys: { days: "ArrowLeft" }, help: DAY_BESIDE },
    "day-after": { keys: { days: "ArrowRight" }, help: DAY_BESIDE },
    "week-before": { keys: { days: "ArrowUp" }, help: WEEK_BESIDE },
    "week-after": { keys: { days: "ArrowDown" }, help: WEEK_BESIDE },
    "first-day": { keys: { days: "Home" }, help: DAY_AT_END },
    "last-day": { keys: { days: "End" }, help: DAY_AT_END },
  },
} as const satisfies CommandTable;

export type DayCommand = CommandAt<typeof MONTH_COMMANDS, "days">;
export const MONTH_KEYS = { parts: keyParts(MONTH_COMMANDS), undo: true };
