/**
 * Cookie headers whose seal has been looked at lately, and the session they name. A page that opens asks a dozen times with
 * one cookie, and a studio full of pages comes back at one moment when its network does: each seal is worked out once a
 * minute. What the session opens is asked of the database each time all the same.
 */
const KEPT_MS = 60_000;
const MOST = 2000;
const LONGEST = 4096;

export class KnownCookies {
  private readonly known = new Map<string, { readonly sessionId: string; readonly until: number }>();

  sessionOf(cookies: string, now: number): string | undefined {
    const found = this.known.get(cookies);
    if (found && found.until <= now) this.known.delete(cookies);
    return found && found.until > now ? found.sessionId : undefined;
  }

  note(cookies: string, sessionId: string, now: number): void {
    if (cookies.length > LONGEST) return;
    const [oldest] = this.known.keys();
    if (this.known.size >= MOST && oldest !== undefined) this.known.delete(oldest);
    this.known.set(cookies, { sessionId, until: now + KEPT_MS });
  }
}
