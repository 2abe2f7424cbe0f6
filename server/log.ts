/** The process's log: one JSON object a line on standard output. Nothing secret is ever put in it. */
import pino, { type Logger } from "pino";

export type Log = Logger;

export function createLog(level: string): Log {
  return pino({
    level,
    base: undefined,
    timestamp: pino.stdTimeFunctions.isoTime,
    redact: {
      paths: ["*.password", "*.token", "*.cookie", "*.authorization", "req.headers", "headers"],
      censor: "(kept out of the log)",
    },
  });
}
