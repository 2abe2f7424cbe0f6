/** Colleagues who are named in comments, and whether they have seen it. */
import { and, asc, desc, eq, inArray, isNull } from "drizzle-orm";
import { userTable } from "#db/auth-schema.ts";
import type { Db } from "#db/connection.ts";
import { mentionTable } from "#db/review-schema.ts";
import { commentTable, threadTable } from "#db/schema.ts";
import type { Anchor } from "#lib/protocol/messages.ts";
import { FORMER_MEMBER } from "./people-repo.ts";

/** A comment that names somebody. */
export interface Mention {
  readonly planId: string;
  readonly threadId: string;
  readonly commentId: string;
  readonly anchor: Anchor;
  readonly settled: boolean;
  readonly byName: string;
  /** ms since the epoch. */
  readonly at: number;
  readonly body: string;
  /** When they had it in front of them; null before. */
  readonly seenAt: number | null;
}

export function insertMentions(
  db: Db,
  made: { readonly commentId: string; readonly threadId: string; readonly userIds: readonly string[] },
): void {
  const { commentId, threadId, userIds } = made;
  if (userIds.length === 0) return;
  db.orm
    .insert(mentionTable)
    .values(userIds.map((userId) => ({ commentId, threadId, userId })))
    .run();
}

/** A desk shows fewer. */
const MOST_MENTIONS = 200;

/**
 * Comments that name this person, the newest first. Whether they may still read the plan is for the caller to ask
 * (`lib/policy`).
 */
export function listMentions(db: Db, userId: string): Mention[] {
  const rows = db.orm
    .select({ mention: mentionTable, comment: commentTable, thread: threadTable, byName: userTable.name })
    .from(mentionTable)
    .innerJoin(commentTable, eq(commentTable.id, mentionTable.commentId))
    .innerJoin(threadTable, eq(threadTable.id, mentionTable.threadId))
    .leftJoin(userTable, eq(userTable.id, commentTable.authorId))
    .where(eq(mentionTable.userId, userId))
    .orderBy(desc(commentTable.at), asc(commentTable.id))
    .limit(MOST_MENTIONS)
    .all();
  return rows.map(({ mention, comment, thread, byName }) => ({
    planId: thread.planId,
    threadId: thread.id,
    commentId: comment.id,
    anchor: JSON.parse(thread.anchorJson) as Anchor, // checked by server/threads when it was written
    settled: thread.settled,
    byName: byName ?? FORMER_MEMBER,
    at: comment.at,
    body: comment.body,
    seenAt: mention.seenAt,
  }));
}

/** Marks comments of one thread that name this person as seen; the first time stays. */
export function markMentionsSeen(
  db: Db,
  seen: {
    readonly threadId: string;
    readonly userId: string;
    readonly commentIds: readonly string[];
    readonly at: number;
  },
): void {
  const { threadId, userId, commentIds, at } = seen;
  const theirs = and(eq(mentionTable.threadId, threadId), eq(mentionTable.userId, userId));
  db.orm
    .update(mentionTable)
    .set({ seenAt: at })
    .where(and(theirs, inArray(mentionTable.commentId, [...commentIds]), isNull(mentionTable.seenAt)))
    .run();
}
