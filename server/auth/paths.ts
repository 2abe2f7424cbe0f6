/**
 * The only door to the sign-in library's own endpoints. It has some sixty; four answer the world: signing in and out,
 * the present session, a new password. All others (sign-up, organizations, members, invitations, tokens, profile) are
 * not there, so that nothing goes past `server/people` and lib/policy.
 */

import * as z from "zod";
import { parseBody, readBodyText } from "#server/http/body.ts";
import { checkOrigin, respond, respondWithCookies } from "#server/http/respond.ts";
import { type AppError, NOT_FOUND, ok, type Result } from "#server/result.ts";
import type { Springline } from "#server/springline.ts";
import { freshenSession } from "./actor.ts";

const PRESENT_SESSION = "/api/auth/get-session";
const CHANGE_PASSWORD = "/api/auth/change-password";
const OPEN = new Set([
  "POST /api/auth/sign-in/email",
  "POST /api/auth/sign-out",
  `GET ${PRESENT_SESSION}`,
  `POST ${CHANGE_PASSWORD}`,
]);
const newPasswordSchema = z.object({ currentPassword: z.string(), newPassword: z.string() });

/** Sentences for what the library refuses; everything else it says is about a mistake in our own pages. */
const SENTENCES: Readonly<Record<string, string>> = {
  INVALID_EMAIL_OR_PASSWORD: "The e-mail address and the password do not belong together.",
  INVALID_EMAIL: "That is not an e-mail address.",
  INVALID_PASSWORD: "The present password is not right.",
  PASSWORD_TOO_SHORT: "A password needs at least 10 characters.",
  PASSWORD_TOO_LONG: "A password has at most 128 characters.",
  UNAUTHORIZED: "Sign in first.",
};

/** Answers `/api/auth/...`. Errors in the shape of every other route: `{error: {code, message}}`. */
export async function answerAuth(app: Springline, request: Request): Promise<Response> {
  const path = new URL(request.url).pathname;
  if (!OPEN.has(`${request.method} ${path}`)) return respond(NOT_FOUND);
  const origin = checkOrigin(app, request);
  if (!origin.ok) return respond(origin);
  if (path === PRESENT_SESSION) return presentSession(app, request);
  const body = await bodyFor(path, request);
  if (!body.ok) return respond(body);
  const response = await app.auth.handler(new Request(request, { body: body.value }));
  if (!response.ok) return refusal(response);
  app.rooms.refreshAccess();
  // The library's own answer repeats the session's token, which only the cookie should carry.
  return respondWithCookies(ok(null), response.headers.getSetCookie());
}

/**
 * What the library is given. Whoever changes a password may fear that somebody else knows the old one: every other
 * session ends with it, whatever the page asks for, and this one goes on under a new token.
 */
async function bodyFor(path: string, request: Request): Promise<Result<string>> {
  const text = await readBodyText(request);
  if (!text.ok || path !== CHANGE_PASSWORD) return text;
  const wanted = parseBody(text.value, newPasswordSchema);
  return wanted.ok ? ok(JSON.stringify({ ...wanted.value, revokeOtherSessions: true })) : wanted;
}

/** Who is signed in, or null. Moves the session's end on; keeps its token out of the reach of scripts. */
async function presentSession(app: Springline, request: Request): Promise<Response> {
  const { who, cookies } = await freshenSession(request.headers, app);
  const shown = who && { user: { id: who.actor.id, name: who.name, email: who.email, roles: who.actor.roles } };
  return respondWithCookies(ok(shown), cookies);
}

async function refusal(response: Response): Promise<Response> {
  const error = response.status === 429 ? tooMany(response) : await toError(response);
  const answer = respond({ ok: false, error });
  for (const cookie of response.headers.getSetCookie()) answer.headers.append("set-cookie", cookie);
  const wait = response.headers.get("x-retry-after");
  if (wait) answer.headers.set("retry-after", wait);
  return answer;
}

function tooMany(response: Response): AppError {
  const seconds = response.headers.get("x-retry-after") ?? "10";
  const message = `Too many tries from this address. Wait ${seconds} seconds and try again.`;
  return { code: "too-many-tries", status: 429, message };
}

async function toError(response: Response): Promise<AppError> {
  const body: unknown = await response.json().catch(() => null);
  const said = typeof body === "object" && body !== null && "code" in body ? String(body.code) : "";
  const code = said === "" ? "sign-in-refused" : said.toLowerCase().replaceAll("_", "-");
  const message = SENTENCES[said] ?? "This could not be done. Check what you typed and try again.";
  return { code, status: response.status, message };
}
