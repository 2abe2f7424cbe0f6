/** Turns a fault of the server into an error for a person. The cause goes to the log, never to the page. */
import type { AppError } from "#server/base/result.ts";
import type { Springline } from "#server/context/springline.ts";
import { REQUEST_ID_HEADER } from "./answered.ts";
import { loggedPath } from "./logged-path.ts";

const DAMAGED: AppError = {
  code: "damaged",
  status: 503,
  message:
    "The studio's database is damaged. Nothing was changed, and nothing can be saved until a backup is restored. Tell the person who runs the server.",
};

/** Refuses a request that would write while the database is known to be damaged. */
export const refuseWrites = ({ db }: Pick<Springline, "db">, { method }: Request): AppError | undefined =>
  db.damage.known !== null && method !== "GET" && method !== "HEAD" ? DAMAGED : undefined;

/** A full disk, a busy database and read errors are distinguished from bugs: they pass, and nothing was half done. */
export function faultToError(cause: unknown, app: Pick<Springline, "db" | "log">, request: Request): AppError {
  const path = loggedPath(request.url);
  const id = request.headers.get(REQUEST_ID_HEADER) ?? undefined;
  app.log.error({ id, err: cause, method: request.method, path }, "request failed");
  const code = cause instanceof Error && "code" in cause ? String(cause.code) : "";
  if (app.db.damage.known !== null || /^SQLITE_(CORRUPT|NOTADB)/.test(code)) return DAMAGED;
  if (code.startsWith("SQLITE_FULL")) {
    return {
      code: "disk-full",
      status: 507,
      message: "The server's disk is full. Nothing was changed; try again later.",
    };
  }
  if (/^SQLITE_(BUSY|IOERR|LOCKED|READONLY)/.test(code)) {
    return {
      code: "storage",
      status: 503,
      message: "The server cannot save at the moment. Nothing was changed; try again.",
    };
  }
  return {
    code: "broken",
    status: 500,
    message:
      "Something went wrong on the server; its log has the details. Try again, or tell the person who runs the server.",
  };
}
