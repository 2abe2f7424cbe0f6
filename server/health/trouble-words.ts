/** What the log said, as sentences for a manager. */
import { plural } from "#lib/plan/format.ts";
import type { LoggedTrouble } from "#server/base/troubles.ts";

export interface TroubleLine {
  readonly at: number;
  readonly level: LoggedTrouble["level"];
  readonly says: string;
}

/** What a code of the system means to somebody who can do something about it. */
const CODES: Readonly<Record<string, string>> = {
  ENOSPC: "The disk is full.",
  SQLITE_FULL: "The disk is full.",
  EDQUOT: "The account's share of the disk is used up.",
  EACCES: "The server's account has no right to.",
  EROFS: "The disk can only be read.",
  EIO: "The disk does not answer as it should.",
  SQLITE_BUSY: "The database was busy for too long.",
  SQLITE_CORRUPT: "The database may be damaged.",
  ECONNREFUSED: "Nothing is listening there.",
  ENOTFOUND: "The name cannot be looked up.",
};

export const troubleLines = (logged: readonly LoggedTrouble[]): TroubleLine[] =>
  logged.map(({ lastAt, times, level, words, code }) => {
    const sentence = `${words.charAt(0).toUpperCase()}${words.slice(1)}`;
    const why = code === null ? "" : ` ${CODES[code] ?? `The system's code is ${code}.`}`;
    const often = times === 1 ? "" : ` ${plural(times, "time")} since the start.`;
    return { at: lastAt, level, says: `${/[.!?]$/.test(sentence) ? sentence : `${sentence}.`}${why}${often}` };
  });
