/**
 * Cookie headers whose signature was verified recently, and the session they name. An opening page sends a dozen requests
 * with one cookie, and after a network failure all pages come back at once: each signature is verified once a minute.
 * Whether the session is still valid is read from the database every time.
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
