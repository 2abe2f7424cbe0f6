/** How much can be said about one plan: every page that opens it is sent all of it. */
import { countThreads, readTalk } from "#db/repos/thread-repo.ts";
import { MOST_THREAD_COMMENTS, MOST_THREADS, TALK_MAX } from "#lib/margin/talk-bounds.ts";
import type { Anchor } from "#lib/protocol/messages.ts";
import { ok, type Result } from "#server/base/result.ts";
import type { Springline } from "#server/context/springline.ts";
import { TALK_FULL, TOO_MANY_COMMENTS, TOO_MANY_THREADS } from "./refusals.ts";

type App = Pick<Springline, "db">;

/** Errors: 409 too-many-threads, plan-talk-full. */
export function roomForThread(
  app: App,
  planId: string,
  made: { readonly anchor: Anchor; readonly body: string },
): Result<null> {
  if (countThreads(app.db, planId).all >= MOST_THREADS) return TOO_MANY_THREADS;
  const { letters } = readTalk(app.db, planId, "");
  return roomForLetters(letters + made.body.length + JSON.stringify(made.anchor).length);
}

/** Errors: 409 too-many-comments, plan-talk-full. */
export function roomForComment(app: App, planId: string, threadId: string, body: string): Result<null> {
  const { comments, letters } = readTalk(app.db, planId, threadId);
  return comments >= MOST_THREAD_COMMENTS ? TOO_MANY_COMMENTS : roomForLetters(letters + body.length);
}

const roomForLetters = (letters: number): Result<null> => (letters > TALK_MAX ? TALK_FULL : ok(null));
