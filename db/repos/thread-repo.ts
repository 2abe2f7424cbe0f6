/** Threads and their comments. */
import { and, asc, count, eq, type SQL, sql } from "drizzle-orm";
import { userTable } from "#db/auth-schema.ts";
import type { Db } from "#db/connection.ts";
import { oncePerDatabase } from "#db/once-per-database.ts";
import { mentionTable } from "#db/review-schema.ts";
import { commentTable, threadTable } from "#db/schema.ts";
import type { Anchor, CommentView, ThreadView } from "#lib/protocol/messages.ts";
import { FORMER_MEMBER, readPerson } from "./people-repo.ts";

export interface ThreadRow {
  readonly id: string;
  readonly planId: string;
  readonly anchor: Anchor;
  readonly settled: boolean;
}

export interface NewComment {
  readonly id: string;
  readonly threadId: string;
  readonly authorId: string;
  readonly body: string;
  /** ms since the epoch. */
  readonly at: number;
}

export function insertThread(db: Db, made: { id: string; planId: string; anchor: Anchor; at: number }): void {
  const { id, planId, anchor, at } = made;
  db.orm
    .insert(threadTable)
    .values({ id, planId, anchorJson: JSON.stringify(anchor), createdAt: at })
    .run();
}

/** What its author is now stays with it: what a lead asked for is a lead's to settle, whatever becomes of that lead. */
export function insertComment(db: Db, made: NewComment): void {
  const asLead = readPerson(db, made.authorId)?.roles.includes("lead") ?? false;
  db.orm
    .insert(commentTable)
    .values({ ...made, asLead })
    .run();
}

export function setThreadSettled(db: Db, id: string, settled: boolean): void {
  db.orm.update(threadTable).set({ settled }).where(eq(threadTable.id, id)).run();
}

export function readThread(db: Db, id: string): ThreadRow | undefined {
  const row = db.orm.select().from(threadTable).where(eq(threadTable.id, id)).get();
  return row && { id: row.id, planId: row.planId, settled: row.settled, anchor: toAnchor(row.anchorJson) };
}

/** Three statements for threads, however many there are. All three run for every page that joins and every comment. */
function statementsFor({ orm }: Db, which: SQL) {
  const threads = orm
    .select()
    .from(threadTable)
    .where(which)
    .orderBy(asc(threadTable.createdAt), sql`${threadTable}.rowid`);
  const comments = orm
    .select({ comment: commentTable, authorName: userTable.name })
    .from(threadTable)
    .innerJoin(commentTable, eq(commentTable.threadId, threadTable.id))
    .leftJoin(userTable, eq(userTable.id, commentTable.authorId))
    .where(which)
    .orderBy(asc(commentTable.at), sql`${commentTable}.rowid`); // rowid: keeps the order within one millisecond
  const mentions = orm
    .select({ commentId: mentionTable.commentId, userId: mentionTable.userId })
    .from(threadTable)
    .innerJoin(commentTable, eq(commentTable.threadId, threadTable.id))
    .innerJoin(mentionTable, eq(mentionTable.commentId, commentTable.id))
    .where(which)
    .orderBy(asc(mentionTable.userId));
  return { threads: threads.prepare(), comments: comments.prepare(), mentions: mentions.prepare() };
}

const ofPlan = oncePerDatabase((db) => statementsFor(db, eq(threadTable.planId, sql.placeholder("id"))));
const ofThread = oncePerDatabase((db) => statementsFor(db, eq(threadTable.id, sql.placeholder("id"))));

/** Threads of a plan with their comments, the oldest first. */
export const listThreads = (db: Db, planId: string): ThreadView[] => threadViews(ofPlan(db), planId);

export const readThreadView = (db: Db, id: string): ThreadView | undefined => threadViews(ofThread(db), id)[0];

function threadViews(statements: ReturnType<typeof statementsFor>, id: string): ThreadView[] {
  const names = grouped(statements.mentions.all({ id }), (row) => row.commentId);
  const comments = grouped(statements.comments.all({ id }), (row) => row.comment.threadId);
  return statements.threads.all({ id }).map((thread) => {
    const own = comments.get(thread.id) ?? [];
    return {
      id: thread.id,
      anchor: toAnchor(thread.anchorJson),
      settled: thread.settled,
      leadSpoke: own.some(({ comment }) => comment.asLead),
      comments: own.map(({ comment, authorName }): CommentView => {
        const { id, authorId, body, at } = comment;
        const named = names.get(id)?.map(({ userId }) => userId);
        return { id, authorId, authorName: authorName ?? FORMER_MEMBER, body, at, ...(named ? { names: named } : {}) };
      }),
    };
  });
}

function grouped<T>(rows: readonly T[], keyOf: (row: T) => string): Map<string, T[]> {
  const groups = new Map<string, T[]>();
  for (const row of rows) {
    const key = keyOf(row);
    const group = groups.get(key);
    if (group) group.push(row);
    else groups.set(key, [row]);
  }
  return groups;
}

export function countThreads(db: Db, planId: string): { readonly all: number; readonly open: number } {
  const of = (where: ReturnType<typeof and>) =>
    db.orm.select({ n: count() }).from(threadTable).where(where).get()?.n ?? 0;
  const all = eq(threadTable.planId, planId);
  return { all: of(all), open: of(and(all, eq(threadTable.settled, false))) };
}

/** Letters of all that was said about a plan and of what it is pinned to, and how many comments one of its threads has. */
export function readTalk(
  db: Db,
  planId: string,
  threadId: string,
): { readonly letters: number; readonly comments: number } {
  const row = db.raw
    .prepare<{ planId: string; threadId: string }, { letters: number; comments: number }>(
      `SELECT (SELECT coalesce(sum(length(c.body)), 0) FROM thread t JOIN comment c ON c.thread_id = t.id
                WHERE t.plan_id = @planId)
            + (SELECT coalesce(sum(length(anchor_json)), 0) FROM thread WHERE plan_id = @planId) AS letters,
              (SELECT count(*) FROM comment WHERE thread_id = @threadId) AS comments`,
    )
    .get({ planId, threadId });
  return row ?? { letters: 0, comments: 0 };
}

const toAnchor = (json: string): Anchor => JSON.parse(json) as Anchor; // checked by server/threads when it was written
