/** Who is asking the running program: for pages and route handlers, which are handed no program. */
import { type HeaderSource, readSignedIn, type Sessions, type SignedIn } from "#server/auth/actor.ts";
import { springline } from "./springline.ts";

/** The person behind these headers, or null when nobody is signed in. Never extends the session. */
export const actorFromHeaders = (source: HeaderSource, app: Sessions = springline()): Promise<SignedIn | null> =>
  readSignedIn(source, app);
