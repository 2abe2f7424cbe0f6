/**
 * The log of the process: one JSON object per line on standard output, never anything secret. When the disk is full or
 * nobody reads the output, lines are lost; the server goes on saving.
 */
import pino, { type Logger } from "pino";

export type Log = Logger;

/** The part of the log that a feature writes to: a test can replace it with three functions. */
export interface EventLog {
  info(details: object, message: string): void;
  warn(details: object, message: string): void;
  error(details: object, message: string): void;
}

/** Bytes that may wait to be written; lines beyond that are dropped. */
const WAITING_BYTES = 1024 * 1024;
const STANDARD_OUTPUT = 1;

export function createLog(level: string, to: number = STANDARD_OUTPUT): Log {
  // Asynchronous: otherwise a pipe that nobody reads would block the whole server.
  const stream = pino.destination({ dest: to, sync: false, maxLength: WAITING_BYTES });
  // There is nowhere to report it.
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
