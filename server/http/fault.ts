/** What went wrong on the server's own side, as an error for a person; the cause goes to the log, never to the page. */
import type { AppError } from "#server/base/result.ts";
import type { Springline } from "#server/context/springline.ts";

const DAMAGED: AppError = {
  code: "damaged",
  status: 503,
  message:
    "The studio's database is damaged: nothing was changed, and nothing can be until a backup is restored. Tell whoever looks after the server.",
};

/** Why this request is not even begun: it would write, and damage is known. */
export const refuseWrites = ({ db }: Pick<Springline, "db">, { method }: Request): AppError | undefined =>
  db.damage.known !== null && method !== "GET" && method !== "HEAD" ? DAMAGED : undefined;

/** Full disk, busy database and read errors are told apart from bugs: they pass, and nothing half done was kept. */
export function faultToError(cause: unknown, app: Pick<Springline, "db" | "log">, request: Request): AppError {
  const path = new URL(request.url).pathname;
  app.log.error({ err: cause, method: request.method, path }, "request failed");
  const code = cause instanceof Error && "code" in cause ? String(cause.code) : "";
  if (app.db.damage.known !== null || /^SQLITE_(CORRUPT|NOTADB)/.test(code)) return DAMAGED;
  if (code.startsWith("SQLITE_FULL")) {
    return {
      code: "disk-full",
      status: 507,
      message: "The server's disk is full: nothing was changed. Try again later.",
    };
  }
  if (/^SQLITE_(BUSY|IOERR|LOCKED|READONLY)/.test(code)) {
    return {
      code: "storage",
      status: 503,
      message: "The server cannot save just now: nothing was changed. Try again.",
    };
  }
  return {
    code: "broken",
    status: 500,
    message: "Something broke on the server. It is in the server's log; try again, or tell whoever looks after it.",
  };
}
