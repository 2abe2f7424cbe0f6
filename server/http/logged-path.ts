/** The path of a request as it may stand in a log: without what opens a door to whoever reads it. */

/** Addresses whose last part is a secret: calendars, reset links, invitations. */
const SECRET = /^(\/+(?:api\/+)?(?:calendar|reset|join)\/+)[^/]+/i;
/** Nobody needs more of an address that was made up. */
const MOST_LETTERS = 300;

/** `address`: a whole address, or what stands in the first line of a request. */
export function loggedPath(address: string): string {
  const path = URL.canParse(address, "http://x") ? new URL(address, "http://x").pathname : "";
  return readable(path).replace(SECRET, "$1...").slice(0, MOST_LETTERS);
}

/** A secret address is one, however its letters were written. */
function readable(path: string): string {
  try {
    return decodeURIComponent(path);
  } catch {
    return path;
  }
}
