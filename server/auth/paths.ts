/**
 * The only door to the sign-in library's own endpoints. It has some sixty; four answer the world: signing in and out,
 * the present session, a new password. All others (sign-up, organizations, members, invitations, tokens, profile) are
 * not there, so that nothing goes past `server/people` and lib/policy.
 */

import { MAX_BODY_BYTES, TOO_LARGE } from "#server/http/body.ts";
import { checkOrigin, respond, respondWithCookies } from "#server/http/respond.ts";
import { type AppError, NOT_FOUND, ok } from "#server/result.ts";
import type { Springline } from "#server/springline.ts";
import { freshenSession } from "./actor.ts";

const PRESENT_SESSION = "/api/auth/get-session";
const OPEN = new Set([
  "POST /api/auth/sign-in/email",
  "POST /api/auth/sign-out",
  `GET ${PRESENT_SESSION}`,
  "POST /api/auth/change-password",
]);

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
  if (Number(request.headers.get("content-length") ?? 0) > MAX_BODY_BYTES) return respond(TOO_LARGE);
  if (path === PRESENT_SESSION) return presentSession(app, request);
  const response = await app.auth.handler(request);
  if (!response.ok) return refusal(response);
  app.rooms.refreshAccess();
  // The library's own answer repeats the session's token, which only the cookie should carry.
  return respondWithCookies(ok(null), response.headers.getSetCookie());
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
