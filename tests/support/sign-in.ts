/** Real sessions for the people of a test studio, through the sign-in library itself. */
import type { PlanStudio, Who } from "./plan-studio.ts";

export const PASSWORD = "a long enough password";

/** The Cookie header of each person. The studio's clock must be close to the machine's own. */
export async function signInAll(s: PlanStudio, people: readonly Who[]): Promise<Map<Who, string>> {
  const { password } = await s.app.auth.$context;
  s.db.raw.prepare("UPDATE account SET password = ?").run(await password.hash(PASSWORD));
  const cookies = new Map<Who, string>();
  for (const who of people) {
    const body = { email: `${who}@tholepin.example`, password: PASSWORD };
    const { headers } = await s.app.auth.api.signInEmail({ body, returnHeaders: true });
    const parts = headers.getSetCookie().map((cookie) => cookie.split(";")[0]);
    cookies.set(who, parts.join("; "));
  }
  return cookies;
}

/**
 * Plain passwords instead of slow hashes, for tests that guess hundreds of times. Comparing a password
 * still takes a turn of the event loop, as hashing does. Call it before `signInAll`.
 */
export async function hashNothing(s: PlanStudio): Promise<void> {
  const { password } = await s.app.auth.$context;
  const turn = () => new Promise((done) => setImmediate(done));
  password.hash = async (text) => {
    await turn();
    return `as it is ${text}`;
  };
  password.verify = async ({ hash, password: text }) => {
    await turn();
    return hash === `as it is ${text}`;
  };
}
