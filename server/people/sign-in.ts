/** Opens a session for somebody whose password was just set, so that the first run and a joining end inside. */
import { rememberBrowser } from "#server/auth/known-browser.ts";
import type { Springline } from "#server/context/springline.ts";

/** The Set-Cookie values of a new session. `headers` are the request's: its address and browser are noted with it. */
export async function signInCookies(
  app: Pick<Springline, "auth" | "env">,
  who: { readonly email: string; readonly password: string },
  headers: Headers,
): Promise<string[]> {
  // Only what the session keeps: an old cookie or the page's own fields are no business of this sign-in.
  const kept = new Headers();
  for (const name of ["user-agent", "x-springline-client"]) kept.set(name, headers.get(name) ?? "");
  const got = await app.auth.api.signInEmail({ body: { ...who }, headers: kept, returnHeaders: true });
  return [...got.headers.getSetCookie(), rememberBrowser(app.env, headers, got.response.user.id)];
}

/** The stored form of a password (the library's own hash). Slow on purpose: call it before a transaction. */
export async function hashPassword(app: Pick<Springline, "auth">, password: string): Promise<string> {
  return (await app.auth.$context).password.hash(password);
}
