/** Which group of addresses a request counts to: a closed list, so that nobody can make new series by asking for things. */

/** The subjects under `/api`. */
const SUBJECTS = new Set([
  ...[
    "acceptances",
    "address",
    "auth",
    "calendar",
    "class-logs",
    "devices",
    "editions",
    "feeds",
    "find",
    "first-run",
    "health",
  ],
  ...[
    "join",
    "library",
    "mail",
    "me",
    "notices",
    "people",
    "plans",
    "programme",
    "proposals",
    "record",
    "remarks",
    "reset",
  ],
  ...["rooms", "rubric", "schema", "standards", "studio", "threads"],
]);

/** `path`: without query. "page", "parts" (scripts, styles), "floor", "socket", or "api/plans" and the like. */
export function routeGroup(path: string): string {
  const [, first = "", second = ""] = path.split("/");
  if (first === "sync" || path === "/floor/line") return "socket";
  if (first === "_next") return "parts";
  if (first === "floor") return "floor";
  if (first !== "api") return "page";
  return SUBJECTS.has(second) ? `api/${second}` : "api/other";
}

/** "4xx"; "none" where nobody waited for the answer (status 0). */
export const statusClass = (status: number): string => (status > 0 ? `${Math.floor(status / 100)}xx` : "none");

/** Why a request was refused, by its status (RFC 9110, 15.5); undefined for one that was not. */
const REASONS: Readonly<Record<number, string>> = {
  400: "bad-request",
  401: "not-signed-in",
  403: "not-allowed",
  405: "method",
  409: "overtaken",
  411: "no-length",
  413: "too-large",
  415: "not-json",
  422: "invalid",
  429: "too-often",
  503: "unavailable",
  507: "disk-full",
};
export const refusalReason = (status: number): string | undefined => REASONS[status];
