/** The commands on month files: each takes a month and its options and returns an answer or one line. */
import { monthFindings, monthSums } from "#lib/month/check/analyst.ts";
import { printCheck } from "#lib/month/file/print-check.ts";
import { printSums } from "#lib/month/file/print-sums.ts";
import type { MonthFile } from "#lib/month/types.ts";
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
};
