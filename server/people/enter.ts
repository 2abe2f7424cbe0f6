/** The three forms that also sign somebody in: the first run, joining by invitation, and a reset link. They set a cookie. */

import { ok } from "#server/base/result.ts";
import type { Springline } from "#server/context/springline.ts";
import { respond, respondWithCookies } from "#server/http/respond.ts";
import { type FirstRun, firstRun } from "./first-run.ts";
import { type Join, join } from "./join.ts";
import { resetPassword } from "./reset-password.ts";
import { signInCookies } from "./sign-in.ts";

export async function openFirstRun(app: Springline, body: FirstRun, headers: Headers): Promise<Response> {
  const made = await firstRun(app, body);
  if (!made.ok) return respond(made);
  return respondWithCookies(ok(made.value), await signInCookies(app, body, headers), 201);
}

export async function openJoin(app: Springline, id: string, body: Join, headers: Headers): Promise<Response> {
  const made = await join(app, id, body);
  if (!made.ok) return respond(made);
  const { userId, email } = made.value;
  const cookies = await signInCookies(app, { email, password: body.password }, headers);
  return respondWithCookies(ok({ userId }), cookies, 201);
}

export async function openReset(app: Springline, token: string, password: string, headers: Headers): Promise<Response> {
  const done = await resetPassword(app, token, password);
  if (!done.ok) return respond(done);
  const { userId, email } = done.value;
  return respondWithCookies(ok({ userId }), await signInCookies(app, { email, password }, headers));
}
