/** Real sessions for the people of a test studio, through the sign-in library itself. */
import crypto from "node:crypto";
import type { PlanStudio, Who } from "./plan-studio.ts";

export const PASSWORD = "a long enough password";

type Hash = (text: string) => Promise<string>;
/** Of the password, made once by each way to hash it; `quick-hashes.ts` may put a quicker one under tests that come later. */
const hashes = new WeakMap<typeof crypto.scrypt, WeakMap<Hash, string>>();

async function hashOnce(hash: Hash): Promise<string> {
  const known = hashes.get(crypto.scrypt) ?? new WeakMap<Hash, string>();
  hashes.set(crypto.scrypt, known);
  const hashed = known.get(hash) ?? (await hash(PASSWORD));
  known.set(hash, hashed);
  return hashed;
}

/**
 * The Cookie header of each person. The studio's clock must be close to the machine's own. Everybody has the password, hashed as
 * the program hashes; only here it is not compared by hashing it again, which takes a tenth of a second for each.
 */
export async function signInAll(s: PlanStudio, people: readonly Who[]): Promise<Map<Who, string>> {
  const { password } = await s.app.auth.$context;
  const { hash, verify } = password;
  const hashed = await hashOnce(hash);
  s.db.raw.prepare("UPDATE account SET password = ?").run(hashed);
  password.verify = async (given) => given.hash === hashed && given.password === PASSWORD;
  const cookies = new Map<Who, string>();
  for (const who of people) {
    const body = { email: `${who}@tholepin.example`, password: PASSWORD };
    const { headers } = await s.app.auth.api.signInEmail({ body, returnHeaders: true });
    const parts = headers.getSetCookie().map((cookie) => cookie.split(";")[0]);
    cookies.set(who, parts.join("; "));
  }
  password.verify = verify;
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
