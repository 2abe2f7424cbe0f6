/**
 * The only door to the sign-in library's own endpoints. It has some sixty; four answer the world: signing in and out,
 * the present session, a new password. All others (sign-up, organizations, members, invitations, tokens, profile) are
 * not there, so that nothing goes past `server/people` and lib/policy.
 */

import * as z from "zod";
import { freshenSession, readSignedIn } from "#server/auth/actor.ts";
import { type GuessOutcome, guessLimitOf } from "#server/auth/guess-limit.ts";
import { rememberBrowser } from "#server/auth/known-browser.ts";
import { type AppError, NOT_FOUND, NOT_SIGNED_IN, ok, type Result } from "#server/base/result.ts";
import type { Springline } from "#server/context/springline.ts";
import { readBody, readBodyText } from "#server/http/body.ts";
import { checkOrigin, respond, respondWithCookies } from "#server/http/respond.ts";

const SIGN_IN = "/api/auth/sign-in/email";
const PRESENT_SESSION = "/api/auth/get-session";
const CHANGE_PASSWORD = "/api/auth/change-password";
const OPEN = new Set([
  `POST ${SIGN_IN}`,
  "POST /api/auth/sign-out",
  `GET ${PRESENT_SESSION}`,
  `POST ${CHANGE_PASSWORD}`,
]);
const signInSchema = z.object({ email: z.string(), password: z.string() });
const newPasswordSchema = z.object({ currentPassword: z.string(), newPassword: z.string() });

const signedInSchema = z.object({ user: z.object({ id: z.string() }) });
const waitSchema = z.object({ seconds: z.number() });
/** The refusals that tell a guesser that the password was another one. */
const WRONG = new Set(["invalid-email-or-password", "invalid-password"]);

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
  if (path === SIGN_IN) return signIn(app, request);
  if (path === CHANGE_PASSWORD) return changePassword(app, request);
  const body = await readBodyText(request);
  return body.ok ? (await handOn(app, request, body.value)).value : respond(body);
}

async function signIn(app: Springline, request: Request): Promise<Response> {
  const body = await readBody(request, signInSchema);
  if (!body.ok) return respond(body);
  const limit = guessLimitOf(app);
  const counts = limit.signIn(app, body.value.email, request.headers);
  return answered(await limit.run(app, counts, () => handOn(app, request, JSON.stringify(body.value))));
}

/**
 * Whoever changes a password may fear that somebody else knows the old one: every other session ends with it, whatever
 * the page asks for, and this one goes on under a new token.
 */
async function changePassword(app: Springline, request: Request): Promise<Response> {
  const who = await readSignedIn(request.headers, app);
  if (!who) return respond(NOT_SIGNED_IN);
  const body = await readBody(request, newPasswordSchema);
  if (!body.ok) return respond(body);
  const wanted = JSON.stringify({ ...body.value, revokeOtherSessions: true });
  const limit = guessLimitOf(app);
  return answered(await limit.run(app, limit.ownPassword(who.actor.id), () => handOn(app, request, wanted)));
}

/** Has the library answer, in our own words, and says what became of a password in it. */
async function handOn(
  app: Springline,
  request: Request,
  body: string,
): Promise<{ readonly verdict: GuessOutcome; readonly value: Response }> {
  const response = await app.auth.handler(new Request(request, { body }));
  if (!response.ok) return refusal(response);
  app.rooms.refreshAccess();
  const cookies = response.headers.getSetCookie();
  const userId = signedInSchema.safeParse(await response.json().catch(() => null)).data?.user.id;
  if (userId) cookies.push(rememberBrowser(app.env, request.headers, userId));
  // The library's own answer repeats the session's token, which only the cookie should carry.
  return { verdict: "right", value: respondWithCookies(ok(null), cookies) };
}

function answered(result: Result<Response>): Response {
  if (result.ok) return result.value;
  const answer = respond(result);
  const wait = waitSchema.safeParse(result.error.details).data;
  if (wait) answer.headers.set("retry-after", String(wait.seconds));
  return answer;
}

/** Who is signed in, or null. Moves the session's end on; keeps its token out of the reach of scripts. */
async function presentSession(app: Springline, request: Request): Promise<Response> {
  const { who, cookies } = await freshenSession(request.headers, app);
  const shown = who && { user: { id: who.actor.id, name: who.name, email: who.email, roles: who.actor.roles } };
  return respondWithCookies(ok(shown), cookies);
}

async function refusal(response: Response): Promise<{ readonly verdict: GuessOutcome; readonly value: Response }> {
  const error = await toError(response);
  const answer = respond({ ok: false, error });
  for (const cookie of response.headers.getSetCookie()) answer.headers.append("set-cookie", cookie);
  return { verdict: WRONG.has(error.code) ? "wrong" : "neither", value: answer };
}

async function toError(response: Response): Promise<AppError> {
  const body: unknown = await response.json().catch(() => null);
  const said = typeof body === "object" && body !== null && "code" in body ? String(body.code) : "";
  const code = said === "" ? "sign-in-refused" : said.toLowerCase().replaceAll("_", "-");
  const message = SENTENCES[said] ?? "This could not be done. Check what you typed and try again.";
  return { code, status: response.status, message };
}
