/**
 * The sign-in library's own endpoints. Of its sixty or so, four are served: signing in, signing out, the current session
 * and changing the password. All others (sign-up, organizations, members, invitations, tokens, profile) answer 404, so that
 * nothing bypasses `server/people` and `lib/policy`.
 */

import * as z from "zod";
import { addToRecord } from "#db/repos/record-repo.ts";
import { dropOpenResetsOf } from "#db/repos/reset-repo.ts";
import { inTransaction } from "#db/transaction.ts";
import { freshenSession, readSignedIn } from "#server/auth/actor.ts";
import { type GuessOutcome, guessLimitOf } from "#server/auth/guess-limit.ts";
import { rememberBrowser } from "#server/auth/known-browser.ts";
import { type AppError, NOT_FOUND, NOT_SIGNED_IN, ok, type Result, SIGN_IN_FIRST } from "#server/base/result.ts";
import type { Springline } from "#server/context/springline.ts";
import { readBody, readBodyText } from "#server/http/body.ts";
import { checkOrigin, respond, respondWithCookies } from "#server/http/respond.ts";
import { PASSWORD_TOO_LONG, PASSWORD_TOO_SHORT } from "./fields.ts";

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
/** The error codes that mean that the password was wrong. */
const WRONG = new Set(["invalid-email-or-password", "invalid-password"]);

/** Our sentences for the library's errors; its other errors mean a mistake in our own pages. */
const SENTENCES: Readonly<Record<string, string>> = {
  INVALID_EMAIL_OR_PASSWORD: "The email address or the password is wrong. Check both and try again.",
  INVALID_EMAIL: "This is not an email address. Check it and try again.",
  INVALID_PASSWORD: "The current password is wrong. Try again.",
  PASSWORD_TOO_SHORT,
  PASSWORD_TOO_LONG,
  UNAUTHORIZED: SIGN_IN_FIRST,
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
 * The old password may have become known to somebody else: changing it ends every other session, whatever the page asks
 * for, and this session continues under a new token.
 */
async function changePassword(app: Springline, request: Request): Promise<Response> {
  const who = await readSignedIn(request.headers, app);
  if (!who) return respond(NOT_SIGNED_IN);
  const body = await readBody(request, newPasswordSchema);
  if (!body.ok) return respond(body);
  const wanted = JSON.stringify({ ...body.value, revokeOtherSessions: true });
  const limit = guessLimitOf(app);
  const { id } = who.actor;
  const done = await limit.run(app, limit.ownPassword(id), () => handOn(app, request, wanted));
  // The library changes it in a transaction of its own.
  const entry = { at: app.now(), actorId: id, subject: `person/${id}`, kind: "password-changed", body: {} };
  if (done.ok && done.value.ok)
    inTransaction(app.db, () => {
      addToRecord(app.db, entry);
      // A link that somebody else may have would undo the change.
      dropOpenResetsOf(app.db, id);
    });
  return answered(done);
}

/** Lets the library answer, replaces its errors by ours, and reports whether a password in the request was right. */
async function handOn(
  app: Springline,
  request: Request,
  body: string,
): Promise<{ readonly verdict: GuessOutcome; readonly value: Response }> {
  const response = await app.auth.handler(new Request(request, { body }));
  if (!response.ok) return refusal(response);
  app.documents.refreshAccess();
  const cookies = response.headers.getSetCookie();
  const userId = signedInSchema.safeParse(await response.json().catch(() => null)).data?.user.id;
  if (userId) cookies.push(rememberBrowser(app.env, request.headers, userId));
  // The library's own answer contains the session's token, which only the cookie should.
  return { verdict: "right", value: respondWithCookies(ok(null), cookies) };
}

function answered(result: Result<Response>): Response {
  if (result.ok) return result.value;
  const answer = respond(result);
  const wait = waitSchema.safeParse(result.error.details).data;
  if (wait) answer.headers.set("retry-after", String(wait.seconds));
  return answer;
}

/** Who is signed in, or null. Extends the session; its token stays out of the reach of scripts. */
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
  const message = SENTENCES[said] ?? "That did not work. Check what you typed and try again.";
  return { code, status: response.status, message };
}
