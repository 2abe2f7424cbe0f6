/**
 * The process's log: one JSON object a line on standard output. Nothing secret is ever put in it. A full disk or a reader
 * that is gone or stuck costs lines, never the process: words are saved whether or not anybody can be told.
 */
import pino, { type Logger } from "pino";

export type Log = Logger;

/** The part of the log that a feature writes to: a test can replace it with three functions. */
export interface EventLog {
  info(details: object, message: string): void;
  warn(details: object, message: string): void;
  error(details: object, message: string): void;
}

/** Bytes of lines that wait to be written; beyond it they are dropped. */
const WAITING_BYTES = 1024 * 1024;
const STANDARD_OUTPUT = 1;

export function createLog(level: string, to: number = STANDARD_OUTPUT): Log {
  // Not in step with the caller: a pipe that nobody reads would hold the whole server.
  const stream = pino.destination({ dest: to, sync: false, maxLength: WAITING_BYTES });
  // There is nowhere to tell of it.
  stream.on("error", () => undefined);
  return pino(
    {
      level,
      base: undefined,
      timestamp: pino.stdTimeFunctions.isoTime,
      redact: {
        paths: ["*.password", "*.token", "*.cookie", "*.authorization", "req.headers", "headers"],
        censor: "(kept out of the log)",
      },
    },
    stream,
  );
}
