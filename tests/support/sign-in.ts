/** Real sessions for the people of a test studio, through the sign-in library itself. */
import type { PlanStudio, Who } from "./plan-studio.ts";

export const PASSWORD = "a long enough password";

/** The Cookie header of each. The studio's clock must be near the machine's own. */
export async function signInAll(s: PlanStudio, people: readonly Who[]): Promise<Map<Who, string>> {
  const { password } = await s.app.auth.$context;
  s.db.raw.prepare("UPDATE account SET password = ?").run(await password.hash(PASSWORD));
  const cookies = new Map<Who, string>();
  for (const who of people) {
    const body = { email: `${who}@tidewater.example`, password: PASSWORD };
    const { headers } = await s.app.auth.api.signInEmail({ body, returnHeaders: true });
    const parts = headers.getSetCookie().map((cookie) => cookie.split(";")[0]);
    cookies.set(who, parts.join("; "));
  }
  return cookies;
}
