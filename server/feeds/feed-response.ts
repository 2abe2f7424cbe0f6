/** A calendar as an HTTP response: only for whoever has the address, asked for again each time, and not sent twice unchanged. */
import type { Result } from "#server/base/result.ts";
import type { CalendarText } from "./made-calendars.ts";

/** `none`: the request's If-None-Match. A refusal is for the caller to answer. */
export function feedResponse({ text, tag }: CalendarText, none: string | null): Response {
  const headers = {
    etag: `"${tag}"`,
    "cache-control": "private, no-cache",
    "content-type": "text/calendar; charset=utf-8",
    "x-content-type-options": "nosniff",
  };
  if (hasTag(none, tag)) {
    const { "content-type": _, ...unchanged } = headers;
    return new Response(null, { status: 304, headers: unchanged });
  }
  return new Response(text, { headers });
}

/** RFC 9110 §13.1.2: `*`, or a list of which one matches, weak or strong. */
const hasTag = (none: string | null, tag: string): boolean =>
  (none ?? "").split(",").some((one) => ["*", `"${tag}"`, `W/"${tag}"`].includes(one.trim()));

/** What follows the last "/" of the address, without its ".ics"; "" for anything else, which is no secret. */
export const secretIn = (file: string): string => (file.endsWith(".ics") ? file.slice(0, -4) : "");

/** Seconds to wait, for programs: RFC 9110 §10.2.3. */
export function retryAfter(result: Result<unknown>): string | undefined {
  const details = result.ok ? undefined : result.error.details;
  return typeof details === "object" && details !== null && "seconds" in details ? String(details.seconds) : undefined;
}
