/** Colleagues who are named in comments: who may be, who is told, and when they have seen it. */
import * as z from "zod";
import { insertMentions, markMentionsSeen } from "#db/repos/mention-repo.ts";
import { listMembers } from "#db/repos/people-repo.ts";
import type { PlanRow } from "#db/repos/plan-repo.ts";
import { readThreadView } from "#db/repos/thread-repo.ts";
import { itemOfAnchor } from "#lib/margin/anchor-item.ts";
import { type NamedPerson, namedIn } from "#lib/margin/named.ts";
import { type Actor, canPlan } from "#lib/policy/can.ts";
import { ok, type Result } from "#server/base/result.ts";
import type { Springline } from "#server/context/springline.ts";
import { tell } from "#server/notices/tell.ts";
import { openPlan } from "#server/plans/open-plan.ts";
import { openOwnThread } from "./own-thread.ts";
import { MENTION_UNKNOWN } from "./refusals.ts";

const MOST_NAMED = 20;
export const namedField = z.array(z.string().max(64)).max(MOST_NAMED, `Name at most ${MOST_NAMED} people.`).optional();

const MOST_SEEN = 500;
export const seenSchema = z.strictObject({ comments: z.array(z.string().max(64)).min(1).max(MOST_SEEN) });

/** Who may read the plan, by name: those who can be named in its threads. Errors: 401, 403, 404. */
export function listPlanReaders(
  app: Pick<Springline, "db">,
  actor: Actor,
  planId: string,
): Result<{ people: NamedPerson[] }> {
  const opened = openPlan(app, actor, planId, "plan.comment");
  return opened.ok ? ok({ people: readersOf(app, opened.value.row) }) : opened;
}

function readersOf(app: Pick<Springline, "db">, row: PlanRow): NamedPerson[] {
  const readers = listMembers(app.db).filter(({ id, roles }) =>
    canPlan({ kind: "person", id, roles }, "plan.read", row),
  );
  return readers.map(({ id, name }) => ({ id, name }));
}

/** Errors: 422 unknown-mention when somebody is not named in the words or may not read the plan. */
export function checkMentions(
  app: Pick<Springline, "db">,
  row: PlanRow,
  made: { readonly body: string; readonly mentions?: readonly string[] | undefined },
): Result<readonly string[]> {
  const asked = [...new Set(made.mentions ?? [])];
  if (asked.length === 0) return ok(asked);
  const named = new Set(namedIn(made.body, readersOf(app, row)));
  return asked.every((id) => named.has(id)) ? ok(asked) : MENTION_UNKNOWN;
}

interface Commented {
  readonly threadId: string;
  readonly commentId: string;
  readonly byId: string;
  readonly named: readonly string[];
}

/**
 * Stores who is named and tells them; tells the thread's people and the plan's owner of the comment. Call inside the
 * comment's transaction. Nobody is told twice, nor somebody who may not read the plan any more.
 */
export function storeMentions(app: Pick<Springline, "db" | "now">, row: PlanRow, made: Commented): void {
  const { threadId, commentId, byId, named } = made;
  insertMentions(app.db, { commentId, threadId, userIds: named });
  const thread = readThreadView(app.db, threadId);
  const itemId = thread && itemOfAnchor(thread.anchor);
  const data = { byId, threadId, ...(itemId ? { itemId } : {}) };
  tell(app, { kind: "mention", to: named, planId: row.id, data });
  const readers = new Set(readersOf(app, row).map(({ id }) => id));
  const people = new Set([row.ownerId, ...(thread?.comments ?? []).map(({ authorId }) => authorId)]);
  const others = [...people].filter((id) => readers.has(id) && !named.includes(id));
  tell(app, { kind: "comment", to: others, planId: row.id, data });
}

/** These comments of the thread were in front of the person. Errors: 401, 403, 404. */
export function seeMentions(
  app: Springline,
  actor: Actor,
  threadId: string,
  commentIds: readonly string[],
): Result<{ seen: true }> {
  const opened = openOwnThread(app, actor, threadId);
  if (!opened.ok) return opened;
  markMentionsSeen(app.db, { threadId, commentIds, userId: opened.value.person.id, at: app.now() });
  return ok({ seen: true });
}
