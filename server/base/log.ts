/**
 * The log of the process: one JSON object per line on standard output, never anything secret. When the disk is full or
 * nobody reads the output, lines are lost; the server goes on saving.
 */
import pino, { type Logger } from "pino";
import type { Troubles } from "./troubles.ts";

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

export interface LogSetup {
  /** A file descriptor. */
  readonly to?: number;
  /** Told of every error and warning that is logged. */
  readonly troubles?: Troubles;
}

export function createLog(level: string, { to = STANDARD_OUTPUT, troubles }: LogSetup = {}): Log {
  // Asynchronous: otherwise a pipe that nobody reads would block the whole server.
  const stream = pino.destination({ dest: to, sync: false, maxLength: WAITING_BYTES });
  // There is nowhere to report it.
  stream.on("error", () => undefined);
  return pino(
    {
      level,
      base: undefined,
      timestamp: pino.stdTimeFunctions.isoTime,
      hooks: {
        logMethod(args, method, number) {
          troubles?.note(args, number);
          method.apply(this, args);
        },
      },
      redact: {
        paths: ["*.password", "*.token", "*.cookie", "*.authorization", "req.headers", "headers"],
        censor: "(kept out of the log)",
      },
    },
    stream,
  );
}
