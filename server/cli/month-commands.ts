/** The commands on month files: each takes a month and its options and returns an answer or one line. */
import { monthFindings, monthSums } from "#lib/month/check/analyst.ts";
import { printCheck } from "#lib/month/file/print-check.ts";
import { printSums } from "#lib/month/file/print-sums.ts";
import { filledMonth } from "#lib/month/fill/fill.ts";
import type { CalendarOf } from "#lib/month/ics/events.ts";
import { calendarOf } from "#lib/month/ics/feed.ts";
import type { MonthFile } from "#lib/month/types.ts";
import { fillAndProve } from "../month-fill/prove.ts";
import type { CommandAnswer } from "./commands.ts";

/** The value of each option that was given, by its name with the hyphens. */
export type MonthOptions = Readonly<Record<string, string>>;

interface MonthCommand {
  /** The options it knows, each with what its value is: `{"--coach": "ID"}`. */
  readonly options?: Readonly<Record<string, string>>;
  readonly answer: (month: MonthFile, options: MonthOptions) => CommandAnswer | Promise<CommandAnswer>;
}

export const MONTH_FILE_COMMANDS: Readonly<Record<string, MonthCommand>> = {
  check: {
    answer: (month) => {
      const findings = monthFindings(month);
      const exit = findings.some(({ level }) => level === "must") ? 1 : 0;
      return { ok: true, json: printCheck(findings), exit };
    },
  },
  sums: { answer: (month) => ({ ok: true, json: printSums(monthSums(month)), exit: 0 }) },
  fill: {
    answer: async (month) => ({ ok: true, json: filledMonth(month, await fillAndProve(month)), exit: 0 }),
  },
  ics: { options: { "--coach": "ID", "--room": "ID" }, answer: ics },
};

function ics(month: MonthFile, options: MonthOptions): CommandAnswer {
  const [coach, room] = [options["--coach"], options["--room"]];
  if (coach !== undefined && room !== undefined) return { ok: false, say: "Give --coach or --room, not both" };
  if (coach !== undefined && !Object.hasOwn(month.coaches, coach)) return unknownPart("coach", coach);
  if (room !== undefined && !Object.hasOwn(month.rooms, room)) return unknownPart("room", room);
  const of: CalendarOf = coach !== undefined ? { coach } : room !== undefined ? { room } : {};
  return { ok: true, text: calendarOf(month, of), exit: 0 };
}

const unknownPart = (what: "coach" | "room", id: string): CommandAnswer => ({
  ok: false,
  say: `this month has no ${what} with the id "${id}"`,
});
