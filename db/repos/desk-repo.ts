/** What the desks ask: who is named where, open proposals, logs not looked at, when somebody was here before. */
import { and, asc, desc, eq, gte, inArray, isNull, sql } from "drizzle-orm";
import type { Db } from "#db/connection.ts";
import { classLogSeenTable, deskVisitTable, mentionTable, proposalTable } from "#db/review-schema.ts";
import { classLogTable, commentTable, threadTable } from "#db/schema.ts";

export interface DeskMention {
  readonly planId: string;
  readonly threadId: string;
  readonly byId: string;
  /** ms since the epoch. */
  readonly at: number;
  readonly body: string;
}

/** Comments that name this person in open threads and that they have not had in front of them, the oldest first. */
export function unseenMentions(db: Db, userId: string): DeskMention[] {
  const { planId, settled } = threadTable;
  return db.orm
    .select({
      planId,
      threadId: threadTable.id,
      byId: commentTable.authorId,
      at: commentTable.at,
      body: commentTable.body,
    })
    .from(mentionTable)
    .innerJoin(commentTable, eq(commentTable.id, mentionTable.commentId))
    .innerJoin(threadTable, eq(threadTable.id, commentTable.threadId))
    .where(and(eq(mentionTable.userId, userId), isNull(mentionTable.seenAt), eq(settled, false)))
    .orderBy(asc(commentTable.at))
    .all();
}

export interface DeskProposal {
  readonly id: string;
  readonly planId: string;
  readonly byId: string;
  readonly at: number;
}

/** Open proposals on these plans, the oldest first. */
export function openProposals(db: Db, planIds: readonly string[]): DeskProposal[] {
  if (planIds.length === 0) return [];
  const { id, planId, byId, at, state } = proposalTable;
  const rows = db.orm.select({ id, planId, byId, at }).from(proposalTable);
  return rows
    .where(and(inArray(planId, [...planIds]), eq(state, "open")))
    .orderBy(asc(at))
    .all();
}

export interface DeskLog {
  readonly sessionId: string;
  readonly planId: string;
  readonly edition: number;
  readonly receivedAt: number;
}

/** Classes since then (ms since the epoch) whose log this person has not looked at, of these plans, the newest first. */
export function unseenLogs(db: Db, userId: string, planIds: readonly string[], since: number): DeskLog[] {
  if (planIds.length === 0) return [];
  const { sessionId, planId, receivedAt, kind } = classLogTable;
  const seen = sql`exists (select 1 from ${classLogSeenTable} where ${classLogSeenTable.sessionId} = ${sessionId} and ${classLogSeenTable.userId} = ${userId})`;
  const rows = db.orm.select({ sessionId, planId, edition: classLogTable.number, receivedAt }).from(classLogTable);
  return rows
    .where(and(inArray(planId, [...planIds]), eq(kind, "class"), gte(receivedAt, since), sql`not ${seen}`))
    .orderBy(desc(receivedAt))
    .all();
}

export function markLogsSeen(db: Db, userId: string, sessionIds: readonly string[], at: number): void {
  for (const sessionId of sessionIds)
    db.orm.insert(classLogSeenTable).values({ sessionId, userId, at }).onConflictDoNothing().run();
}

/** A desk opened again within this time continues the visit, ms. */
const SAME_VISIT_MS = 30 * 60_000;

/** Notes that somebody is at their desk; returns when they were there before this visit (ms), 0 for the first time. */
export function visitDesk(db: Db, userId: string, now: number): number {
  const last = db.orm.select().from(deskVisitTable).where(eq(deskVisitTable.userId, userId)).get();
  const before = last ? (now - last.at < SAME_VISIT_MS ? last.before : last.at) : 0;
  const row = { userId, at: now, before };
  db.orm.insert(deskVisitTable).values(row).onConflictDoUpdate({ target: deskVisitTable.userId, set: row }).run();
  return before;
}
