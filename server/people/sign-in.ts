/** Signs in somebody who has just set their password, so that they need not type it again. */
import { rememberBrowser } from "#server/auth/known-browser.ts";
import type { Springline } from "#server/context/springline.ts";
import { CLIENT_ADDRESS_HEADER } from "#server/limits/network.ts";

/** The Set-Cookie values of a new session. `headers` are those of the request: the session stores address and browser. */
export async function signInCookies(
  app: Pick<Springline, "auth" | "env">,
  who: { readonly email: string; readonly password: string },
  headers: Headers,
): Promise<string[]> {
  // Only what the session stores; an old cookie must not interfere.
  const kept = new Headers();
  for (const name of ["user-agent", CLIENT_ADDRESS_HEADER]) kept.set(name, headers.get(name) ?? "");
  const got = await app.auth.api.signInEmail({ body: { ...who }, headers: kept, returnHeaders: true });
  return [...got.headers.getSetCookie(), rememberBrowser(app.env, headers, got.response.user.id)];
}

/** The library's hash of a password. Slow on purpose: call it before a transaction. */
export async function hashPassword(app: Pick<Springline, "auth">, password: string): Promise<string> {
  return (await app.auth.$context).password.hash(password);
}
