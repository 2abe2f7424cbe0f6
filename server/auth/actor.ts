/**
 * Who is asking: the person behind a session cookie, for HTTP requests, pages and socket upgrades alike. Roles are read
 * from the database each time, so a changed role takes effect with the next request.
 */
import type { Db } from "#db/connection.ts";
import { readSession } from "#db/repos/session-repo.ts";
import { type Person, parseRoles, type Role } from "#lib/policy/can.ts";
import type { Env } from "#server/base/env.ts";
import type { Auth } from "./auth.ts";
import { rememberBrowser } from "./known-browser.ts";
import { KnownCookies } from "./known-cookies.ts";

/** A person with a valid session. */
export interface SignedIn {
  readonly actor: Person;
  readonly name: string;
  readonly email: string;
  readonly sessionId: string;
}

/** Headers of a route handler's request, or Node's `IncomingMessage.headers`. */
export type HeaderSource = Headers | Readonly<Record<string, string | string[] | undefined>>;
/** What is needed to find out who is asking. */
export interface Sessions {
  readonly auth: Auth;
  readonly db: Db;
  /** ms since the epoch, UTC. */
  now(): number;
}

/**
 * The person behind these headers. Null without a cookie, for a forged or expired session, and for somebody who has left
 * the studio. Never extends the session, since a page cannot send the new cookie: `freshenSession` does.
 */
export async function readSignedIn(source: HeaderSource, app: Sessions): Promise<SignedIn | null> {
  const headers = toHeaders(source);
  const cookies = headers.get("cookie");
  if (cookies === null) return null;
  const known = knownCookies(app.auth);
  const sessionId = known.sessionOf(cookies, app.now());
  if (sessionId !== undefined) return signedIn(app, sessionId);
  const found = await app.auth.api.getSession({ headers, query: { disableRefresh: true } });
  const who = found && signedIn(app, found.session.id);
  if (who) known.note(cookies, who.sessionId, app.now());
  return who;
}

const kept = new WeakMap<Auth, KnownCookies>();

function knownCookies(auth: Auth): KnownCookies {
  const known = kept.get(auth) ?? new KnownCookies();
  kept.set(auth, known);
  return known;
}

/**
 * The same, with the cookies to send when the session was extended (sliding expiry) or its cookie is no longer valid. When
 * a session is extended, the browser is remembered as well (`known-browser.ts`).
 */
export async function freshenSession(
  headers: HeaderSource,
  app: Sessions & { readonly env: Env },
): Promise<{ readonly who: SignedIn | null; readonly cookies: readonly string[] }> {
  const got = await app.auth.api.getSession({ headers: toHeaders(headers), returnHeaders: true });
  const who = got.response && signedIn(app, got.response.session.id);
  const cookies = got.headers.getSetCookie();
  if (who && cookies.length > 0) cookies.push(rememberBrowser(app.env, toHeaders(headers), who.actor.id));
  return { who, cookies };
}

export interface SessionAccess {
  readonly userId: string;
  readonly name: string;
  readonly email: string;
  readonly roles: readonly Role[];
  /** ms since the epoch. */
  readonly expiresAt: number;
}

/**
 * Whose session it is at `now` (ms); null once it has ended or expired, or the person has left. Synchronous, one prepared
 * statement, no cache: it is asked for every open socket twice a second.
 */
export function sessionAccess(db: Db, sessionId: string, now: number): SessionAccess | null {
  const row = readSession(db, sessionId);
  if (!row || row.role === null || row.expiresAt <= now) return null;
  const { userId, name, email, expiresAt } = row;
  return { userId, name, email, roles: parseRoles(row.role), expiresAt };
}

function signedIn(app: Sessions, sessionId: string): SignedIn | null {
  const access = sessionAccess(app.db, sessionId, app.now());
  if (!access) return null;
  const { userId, name, email, roles } = access;
  return { actor: { kind: "person", id: userId, roles }, name, email, sessionId };
}

export function toHeaders(source: HeaderSource): Headers {
  if (source instanceof Headers) return source;
  const headers = new Headers();
  for (const [name, value] of Object.entries(source)) {
    if (name.startsWith(":")) continue;
    if (value !== undefined) headers.set(name, Array.isArray(value) ? value.join(", ") : value);
  }
  return headers;
}
