/** Threads and their comments. */
import { and, asc, count, eq, inArray, sql } from "drizzle-orm";
import { memberTable, userTable } from "#db/auth-schema.ts";
import type { Db } from "#db/connection.ts";
import { oncePerDatabase } from "#db/once-per-database.ts";
import { commentTable, threadTable } from "#db/schema.ts";
import { parseRoles } from "#lib/policy/can.ts";
import type { Anchor, CommentView, ThreadView } from "#lib/protocol/messages.ts";
import { FORMER_MEMBER } from "./people-repo.ts";

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

export function insertComment(db: Db, made: NewComment): void {
  db.orm.insert(commentTable).values(made).run();
}

export function setThreadSettled(db: Db, id: string, settled: boolean): void {
  db.orm.update(threadTable).set({ settled }).where(eq(threadTable.id, id)).run();
}

export function readThread(db: Db, id: string): ThreadRow | undefined {
  const row = db.orm.select().from(threadTable).where(eq(threadTable.id, id)).get();
  return row && { id: row.id, planId: row.planId, settled: row.settled, anchor: toAnchor(row.anchorJson) };
}

/** Runs for every page that joins a plan. */
const threadsOfPlan = oncePerDatabase(({ orm }) =>
  orm
    .select()
    .from(threadTable)
    .where(eq(threadTable.planId, sql.placeholder("planId")))
    .orderBy(asc(threadTable.createdAt), sql`rowid`)
    .prepare(),
);

/** Threads of a plan with their comments, the oldest first. */
export function listThreads(db: Db, planId: string): ThreadView[] {
  const threads = threadsOfPlan(db).all({ planId });
  const comments = commentsOf(
    db,
    threads.map((t) => t.id),
  );
  return threads.map((t) => ({
    id: t.id,
    anchor: toAnchor(t.anchorJson),
    settled: t.settled,
    leadSpoke: leadSpoke(db, t.id),
    comments: comments.get(t.id) ?? [],
  }));
}

/** Whether anybody who commented in the thread is a lead now. */
export function leadSpoke(db: Db, threadId: string): boolean {
  const rows = db.orm
    .select({ role: memberTable.role })
    .from(commentTable)
    .innerJoin(memberTable, eq(memberTable.userId, commentTable.authorId));
  return rows
    .where(eq(commentTable.threadId, threadId))
    .all()
    .some(({ role }) => parseRoles(role).includes("lead"));
}

/** Ids of everybody who wrote in a thread. */
export function listThreadPeople(db: Db, threadId: string): string[] {
  const rows = db.orm.selectDistinct({ id: commentTable.authorId }).from(commentTable);
  return rows
    .where(eq(commentTable.threadId, threadId))
    .all()
    .map(({ id }) => id);
}

export function countThreads(db: Db, planId: string): { readonly all: number; readonly open: number } {
  const of = (where: ReturnType<typeof and>) =>
    db.orm.select({ n: count() }).from(threadTable).where(where).get()?.n ?? 0;
  const all = eq(threadTable.planId, planId);
  return { all: of(all), open: of(and(all, eq(threadTable.settled, false))) };
}

function commentsOf(db: Db, threadIds: string[]): Map<string, CommentView[]> {
  const found = new Map<string, CommentView[]>();
  if (threadIds.length === 0) return found;
  const rows = db.orm
    .select({ comment: commentTable, authorName: userTable.name })
    .from(commentTable)
    .leftJoin(userTable, eq(userTable.id, commentTable.authorId))
    .where(inArray(commentTable.threadId, threadIds))
    .orderBy(asc(commentTable.at), sql`${commentTable}.rowid`) // rowid: keeps the order within one millisecond
    .all();
  for (const { comment: row, authorName } of rows) {
    const { id, authorId, body, at } = row;
    const view = { id, authorId, authorName: authorName ?? FORMER_MEMBER, body, at };
    found.set(row.threadId, [...(found.get(row.threadId) ?? []), view]);
  }
  return found;
}

const toAnchor = (json: string): Anchor => JSON.parse(json) as Anchor; // checked by server/threads when it was written
