/** Threads on a plan: opening, answering, settling and reopening them. The author is always the signed-in person. */

import * as z from "zod";
import { insertComment, insertThread, listThreads, readThreadView, setThreadSettled } from "#db/repos/thread-repo.ts";
import { inTransaction } from "#db/transaction.ts";
import { type Actor, canSettle } from "#lib/policy/can.ts";
import type { ThreadView } from "#lib/protocol/messages.ts";
import { ok, type Result } from "#server/base/result.ts";
import { typedText } from "#server/base/typed-text.ts";
import type { Springline } from "#server/context/springline.ts";
import { onceOnly } from "#server/limits/same-again.ts";
import { announceThread } from "#server/news/plan-news.ts";
import { type OpenedPlan, openPlan } from "#server/plans/open-plan.ts";
import { withPlan } from "#server/plans/plan-doc.ts";
import { anchorSchema, checkAnchor } from "./anchors.ts";
import { checkMentions, namedField, storeMentions } from "./mentions.ts";
import { type OwnThread, openOwnThread } from "./own-thread.ts";
import { answeredSince, FOR_A_LEAD } from "./refusals.ts";
import { roomForComment, roomForThread } from "./room-for-talk.ts";

const BODY_MAX = 4000;
const body = typedText.min(1, "Write a comment first.").max(BODY_MAX, `A comment has at most ${BODY_MAX} characters.`);

export const newThreadSchema = z.strictObject({ anchor: anchorSchema, body, mentions: namedField });
export const newCommentSchema = z.strictObject({ body, mentions: namedField });
/** `seen`: how many comments were in sight when somebody settled it. Pages of an older version do not say. */
export const settleSchema = z.strictObject({ settled: z.boolean(), seen: z.int().min(0).optional() });

/** Threads of a plan, the oldest first. Errors: 401, 403, 404. */
export function listPlanThreads(app: Springline, actor: Actor, planId: string): Result<{ threads: ThreadView[] }> {
  const opened = openPlan(app, actor, planId, "plan.read");
  return opened.ok ? ok({ threads: listThreads(app.db, planId) }) : opened;
}

/** Errors: 401, 403, 404; 422 and 409 of `checkAnchor`, 422 unknown-mention, 409 too-many-threads, plan-talk-full. */
export function openThread(
  app: Springline,
  actor: Actor,
  planId: string,
  made: z.infer<typeof newThreadSchema>,
): Result<{ id: string }> {
  const opened = openPlan(app, actor, planId, "plan.comment");
  if (!opened.ok) return opened;
  return onceOnly(app, { userId: opened.value.person.id, to: `thread ${planId}`, sent: made }, () =>
    storeThread(app, opened.value, made),
  );
}

function storeThread(
  app: Springline,
  { row, person }: OpenedPlan,
  made: z.infer<typeof newThreadSchema>,
): Result<{ id: string }> {
  const planId = row.id;
  const full = roomForThread(app, planId, made);
  if (!full.ok) return full;
  const anchor = withPlan(app, row, (_, doc) => checkAnchor(doc, made.anchor));
  if (!anchor.ok) return anchor;
  const named = checkMentions(app, row, made);
  if (!named.ok) return named;
  const [id, commentId, at] = [app.newId(), app.newId(), app.now()];
  inTransaction(app.db, () => {
    insertThread(app.db, { id, planId, anchor: anchor.value, at });
    insertComment(app.db, { id: commentId, threadId: id, authorId: person.id, body: made.body, at });
    storeMentions(app, row, { threadId: id, commentId, byId: person.id, named: named.value });
  });
  announceThread(app, planId, id);
  return ok({ id });
}

/**
 * Answers a thread; a settled one stays settled, and the answer says so. Errors: 401, 403, 404, 422 unknown-mention,
 * 409 too-many-comments, plan-talk-full.
 */
export function addComment(
  app: Springline,
  actor: Actor,
  threadId: string,
  body: string,
  mentions?: readonly string[],
): Result<{ id: string; settled: boolean }> {
  const opened = openOwnThread(app, actor, threadId);
  if (!opened.ok) return opened;
  return onceOnly(app, { userId: opened.value.person.id, to: `comment ${threadId}`, sent: [body, mentions] }, () =>
    storeComment(app, opened.value, { body, mentions }),
  );
}

function storeComment(
  app: Springline,
  { row, thread, person }: OwnThread,
  { body, mentions }: { readonly body: string; readonly mentions: readonly string[] | undefined },
): Result<{ id: string; settled: boolean }> {
  const threadId = thread.id;
  const full = roomForComment(app, row.id, threadId, body);
  if (!full.ok) return full;
  const named = checkMentions(app, row, { body, mentions });
  if (!named.ok) return named;
  const id = app.newId();
  inTransaction(app.db, () => {
    insertComment(app.db, { id, threadId, authorId: person.id, body, at: app.now() });
    storeMentions(app, row, { threadId, commentId: id, byId: person.id, named: named.value });
  });
  announceThread(app, thread.planId, threadId);
  return ok({ id, settled: thread.settled });
}

/**
 * Settles a thread or reopens it. Only a lead can settle what a lead asked for, so that no plan is signed without a lead
 * having seen the answer; and nobody settles it over a comment that was not in sight (`seen`, of those there are).
 * Errors: 401, 403 no-right, 403 for-a-lead, 404, 409 answered-since (`details.comments`).
 */
export function settlePlanThread(
  app: Springline,
  actor: Actor,
  threadId: string,
  settled: boolean,
  seen?: number,
): Result<{ settled: boolean }> {
  const opened = openOwnThread(app, actor, threadId);
  if (!opened.ok) return opened;
  const { person, row } = opened.value;
  const { leadSpoke = false, comments = [] } = readThreadView(app.db, threadId) ?? {};
  if (settled && !canSettle(person, row, { leadSpoke })) return FOR_A_LEAD;
  if (settled && seen !== undefined && comments.length > seen) return answeredSince(comments.slice(seen));
  setThreadSettled(app.db, threadId, settled);
  announceThread(app, row.id, threadId);
  return ok({ settled });
}
