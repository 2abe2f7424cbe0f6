/** The keys of the month's sheet: from class to class, and of a class that is on its way to another time. */
import { type CommandAt, type CommandTable, keyParts } from "#app/_parts/commands/command.ts";

const DAY_BESIDE = "the day before or after";
const CLASS_BESIDE = "the class before or after on the day";
const WEEK_BESIDE = "a week back or on";
const DAY_AT_END = "the first or the last day";
const PLAN_NTH = "put the open class on that plan of its list";
const MOVE_TIME = "five minutes earlier or later";
const MOVE_DAY = "to the day before or after";

const nth = (n: number) => ({ keys: { sheet: String(n) }, help: PLAN_NTH }) as const;
const nthInPanel = (n: number) => ({ keys: { panel: String(n) }, help: PLAN_NTH }) as const;

export const SHEET_COMMANDS = {
  places: {
    sheet: { title: "In the month", others: [["Enter", "open the class, or add one to the day"]] },
    moving: { title: "While a class is being moved" },
  },
  commands: {
    "day-before": { keys: { sheet: "ArrowUp" }, help: DAY_BESIDE },
    "day-after": { keys: { sheet: "ArrowDown" }, help: DAY_BESIDE },
    "class-before": { keys: { sheet: "ArrowLeft" }, help: CLASS_BESIDE },
    "class-after": { keys: { sheet: "ArrowRight" }, help: CLASS_BESIDE },
    "week-before": { keys: { sheet: "PageUp" }, help: WEEK_BESIDE },
    "week-after": { keys: { sheet: "PageDown" }, help: WEEK_BESIDE },
    "first-day": { keys: { sheet: "Home" }, help: DAY_AT_END },
    "last-day": { keys: { sheet: "End" }, help: DAY_AT_END },
    add: { keys: { sheet: "N" }, help: "add a class to the day" },
    move: { keys: { sheet: "M" }, help: "move the class, then arrows" },
    "take-out": { keys: { sheet: ["Delete", "Backspace"] }, help: "take the class out, or put it back" },
    "next-finding": { keys: { sheet: "F" }, help: "the next finding" },
    "other-regulars": { keys: { sheet: "R" }, help: "work and rest of the next regulars" },
    close: { keys: { sheet: "Escape" }, help: "close what is open beside the month" },
    "plan-1": nth(1),
    "plan-2": nth(2),
    "plan-3": nth(3),
    "plan-4": nth(4),
    "plan-5": nth(5),
    "plan-6": nth(6),
    "plan-7": nth(7),
    "plan-8": nth(8),
    "plan-9": nth(9),
    earlier: { keys: { moving: "ArrowLeft" }, help: MOVE_TIME },
    later: { keys: { moving: "ArrowRight" }, help: MOVE_TIME },
    "up-a-day": { keys: { moving: "ArrowUp" }, help: MOVE_DAY },
    "down-a-day": { keys: { moving: "ArrowDown" }, help: MOVE_DAY },
    "put-there": { keys: { moving: "Enter" }, help: "leave it there" },
    "give-up": { keys: { moving: "Escape" }, help: "let it be where it was" },
  },
} as const satisfies CommandTable;

/** The same beside the sheet, while nobody types. */
export const PANEL_COMMANDS = {
  places: {
    panel: { title: "Beside the month" },
    beside: { title: "Beside the month, also while typing", whileTyping: true },
  },
  commands: {
    close: { keys: { beside: "Escape" }, help: "close it and go back to the month" },
    "plan-1": nthInPanel(1),
    "plan-2": nthInPanel(2),
    "plan-3": nthInPanel(3),
    "plan-4": nthInPanel(4),
    "plan-5": nthInPanel(5),
    "plan-6": nthInPanel(6),
    "plan-7": nthInPanel(7),
    "plan-8": nthInPanel(8),
    "plan-9": nthInPanel(9),
  },
} as const satisfies CommandTable;

export type SheetCommand = CommandAt<typeof SHEET_COMMANDS, "sheet">;
export type MovingCommand = CommandAt<typeof SHEET_COMMANDS, "moving">;
export const MONTH_KEYS = {
  parts: [...keyParts(SHEET_COMMANDS), ...keyParts(PANEL_COMMANDS)],
  undo: true,
  note: "Drag a class along its rail to change its time, across the days to change its day.",
};
