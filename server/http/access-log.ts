/**
 * One line in the log for each request, when the studio's host wants them: never a query, a cookie, a body, a person or the
 * address of whoever asked.
 */
import type { Log } from "#server/base/log.ts";
import type { HearAnswered } from "./answered.ts";

/** The lines are written whatever level the log has: the setting itself asks for them. */
export function accessLines(log: Log): HearAnswered {
  const lines = log.child({}, { level: "info" });
  return ({ ms, ...request }) => lines.info({ ...request, ms: Math.round(ms * 10) / 10 }, "request");
}
