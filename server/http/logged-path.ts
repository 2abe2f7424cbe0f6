/** The path of a request as it may stand in a log: without what opens a door to whoever reads it. */

/** Addresses whose last part is a secret: calendars, reset links, invitations. */
const SECRET = /^(\/(?:api\/)?(?:calendar|reset|join)\/)[^/]+/;

/** `address`: a whole address, or what stands in the first line of a request. */
export function loggedPath(address: string): string {
  const path = URL.canParse(address, "http://x") ? new URL(address, "http://x").pathname : "";
  return path.replace(SECRET, "$1...");
}
