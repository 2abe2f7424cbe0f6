/**
 * The last errors and warnings of the log, for the manager's page. Only the fixed words and a code of the system are kept: what
 * stands beside them in the log may name people, plans and addresses.
 */

export interface LoggedTrouble {
  /** The first time and the last, ms since the epoch. */
  readonly firstAt: number;
  readonly lastAt: number;
  readonly times: number;
  readonly level: "warning" | "error";
  /** As it stands in the log: "the disk failed". */
  readonly words: string;
  /** "ENOSPC", where the system gave one. */
  readonly code: string | null;
}

export interface Troubles {
  /** `args` as they were handed to the log, `level` as its number. Never throws. */
  note(args: readonly unknown[], level: number): void;
  /** The latest first. */
  list(): readonly LoggedTrouble[];
}

const MOST = 20;
const WARN = 40;
const ERROR = 50;
const CODE = /^[A-Z][A-Z0-9_]{2,40}$/;
/** Of what libraries log, nothing is known. */
const OF_A_LIBRARY = "a part of the server reported an error";

export function createTroubles(now: () => number = Date.now): Troubles {
  const kept = new Map<string, LoggedTrouble>();
  return {
    note(args, level) {
      if (level < WARN) return;
      const [details, message] = args;
      const own = typeof details === "object" && details !== null && typeof message === "string";
      const words = own ? message : OF_A_LIBRARY;
      const code = own ? codeIn(details) : null;
      const key = `${level} ${words} ${code}`;
      const before = kept.get(key);
      const at = now();
      kept.delete(key);
      kept.set(key, {
        ...{ firstAt: before?.firstAt ?? at, lastAt: at, times: (before?.times ?? 0) + 1 },
        ...{ level: level >= ERROR ? "error" : "warning", words, code },
      });
      const oldest = kept.keys().next().value;
      if (kept.size > MOST && oldest !== undefined) kept.delete(oldest);
    },
    list: () => [...kept.values()].reverse(),
  };
}

function codeIn(details: object): string | null {
  const err: unknown = "err" in details ? details.err : undefined;
  const code: unknown = typeof err === "object" && err !== null && "code" in err ? err.code : undefined;
  return typeof code === "string" && CODE.test(code) ? code : null;
}
