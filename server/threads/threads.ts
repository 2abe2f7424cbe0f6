/** Threads on a plan: opening, answering, settling and reopening them. The author is always the signed-in person. */

import * as z from "zod";
import {
  insertComment,
  insertThread,
  leadSpoke,
  listThreads,
  readThread,
  setThreadSettled,
  type ThreadRow,
} from "#db/repos/thread-repo.ts";
import { inTransaction } from "#db/transaction.ts";
import { type Actor, canSettle } from "#lib/policy/can.ts";
import type { ThreadView } from "#lib/protocol/messages.ts";
import { NOT_FOUND, ok, type Result } from "#server/base/result.ts";
import type { Springline } from "#server/context/springline.ts";
import { announceThreads } from "#server/news/plan-news.ts";
import { tellComment } from "#server/notices/tell-plan.ts";
import { type OpenedPlan, openPlan } from "#server/plans/open-plan.ts";
import { withPlan } from "#server/plans/plan-doc.ts";
import { anchorSchema, checkAnchor } from "./anchors.ts";
import { FOR_A_LEAD } from "./refusals.ts";

const BODY_MAX = 4000;
const body = z
  .string()
  .trim()
  .min(1, "Write a comment first.")
  .max(BODY_MAX, `A comment has at most ${BODY_MAX} characters.`);

export const newThreadSchema = z.strictObject({ anchor: anchorSchema, body });
export const newCommentSchema = z.strictObject({ body });
export const settleSchema = z.strictObject({ settled: z.boolean() });

/** Threads of a plan, the oldest first. Errors: 401, 403, 404. */
export function listPlanThreads(app: Springline, actor: Actor, planId: string): Result<{ threads: ThreadView[] }> {
  const opened = openPlan(app, actor, planId, "plan.read");
  return opened.ok ? ok({ threads: listThreads(app.db, planId) }) : opened;
}

/** Errors: 401, 403, 404, 422 no-such-item, 422 no-words. */
export function openThread(
  app: Springline,
  actor: Actor,
  planId: string,
  made: z.infer<typeof newThreadSchema>,
): Result<{ id: string }> {
  const opened = openPlan(app, actor, planId, "plan.comment");
  if (!opened.ok) return opened;
  const { row, person } = opened.value;
  const anchor = withPlan(app, row, (_, doc) => checkAnchor(doc, made.anchor));
  if (!anchor.ok) return anchor;
  const id = app.newId();
  const at = app.now();
  inTransaction(app.db, () => {
    insertThread(app.db, { id, planId, anchor: anchor.value, at });
    insertComment(app.db, { id: app.newId(), threadId: id, authorId: person.id, body: made.body, at });
    tellComment(app, row, person.id, { threadId: id });
  });
  announceThreads(app, planId);
  return ok({ id });
}

/** Answers a thread; a settled one stays settled. Errors: 401, 403, 404. */
export function addComment(app: Springline, actor: Actor, threadId: string, text: string): Result<{ id: string }> {
  const opened = openOwnThread(app, actor, threadId);
  if (!opened.ok) return opened;
  const { thread, person, row } = opened.value;
  const id = app.newId();
  inTransaction(app.db, () => {
    insertComment(app.db, { id, threadId, authorId: person.id, body: text, at: app.now() });
    tellComment(app, row, person.id, { threadId });
  });
  announceThreads(app, thread.planId);
  return ok({ id });
}

/**
 * Settles a thread or reopens it. Only a lead can settle what a lead asked for, so that no plan is signed without a lead
 * having seen the answer. Errors: 401, 403 no-right, 403 for-a-lead, 404.
 */
export function settlePlanThread(
  app: Springline,
  actor: Actor,
  threadId: string,
  settled: boolean,
): Result<{ settled: boolean }> {
  const opened = openOwnThread(app, actor, threadId);
  if (!opened.ok) return opened;
  const { person, row } = opened.value;
  if (settled && !canSettle(person, row, { leadSpoke: leadSpoke(app.db, threadId) })) return FOR_A_LEAD;
  setThreadSettled(app.db, threadId, settled);
  announceThreads(app, opened.value.thread.planId);
  return ok({ settled });
}

/** A thread of a plan that the asker may comment on. */
function openOwnThread(
  app: Springline,
  actor: Actor,
  threadId: string,
): Result<OpenedPlan & { readonly thread: ThreadRow }> {
  const thread = readThread(app.db, threadId);
  if (!thread) return NOT_FOUND;
  const opened = openPlan(app, actor, thread.planId, "plan.comment");
  return opened.ok ? ok({ ...opened.value, thread }) : opened;
}
