/** What rounds, threads and class logs say about one person's plans. Reads only. */
import { and, asc, desc, eq, inArray } from "drizzle-orm";
import type { Db } from "#db/connection.ts";
import { planMomentTable, planRoundTable, planTextTable } from "#db/review-schema.ts";
import { classLogTable, commentTable, planTable, threadTable } from "#db/schema.ts";
import type { Anchor } from "#lib/protocol/messages.ts";
import type { Finding } from "#lib/rules/define/types.ts";

export interface RoundMoment {
  readonly planId: string;
  readonly round: number;
  readonly kind: "offered" | "returned" | "signed" | "withdrawn" | "taken-back";
  /** ms since the epoch. */
  readonly at: number;
  readonly findings: readonly Finding[];
  readonly note: string | null;
  /** Canonical JSON of the plan; null when it could not be read then. */
  readonly planJson: string | null;
}

/** The moments of all rounds that this person offered, the oldest first. */
export function listMomentsOffered(db: Db, userId: string): RoundMoment[] {
  const rows = db.orm
    .select({ moment: planMomentTable, planJson: planTextTable.planJson })
    .from(planMomentTable)
    .innerJoin(
      planRoundTable,
      and(eq(planRoundTable.planId, planMomentTable.planId), eq(planRoundTable.number, planMomentTable.round)),
    )
    .leftJoin(
      planTextTable,
      and(eq(planTextTable.planId, planMomentTable.planId), eq(planTextTable.hash, planMomentTable.hash)),
    )
    .where(eq(planRoundTable.offeredBy, userId))
    .orderBy(asc(planMomentTable.id));
  return rows.all().map(({ moment: { planId, round, kind, at, note, findingsJson }, planJson }) => {
    return { planId, round, kind, at, note, planJson, findings: JSON.parse(findingsJson) as Finding[] }; // written with the moment
  });
}

export interface Comment {
  readonly planId: string;
  readonly at: number;
  readonly anchor: Anchor;
  readonly body: string;
}

/** Every comment on these plans, with the place of its thread. */
export function listCommentsOn(db: Db, planIds: readonly string[]): Comment[] {
  if (planIds.length === 0) return [];
  const { planId, anchorJson } = threadTable;
  const rows = db.orm
    .select({ planId, at: commentTable.at, anchorJson, body: commentTable.body })
    .from(commentTable)
    .innerJoin(threadTable, eq(threadTable.id, commentTable.threadId))
    .where(inArray(planId, [...planIds]));
  return rows.all().map(({ anchorJson: anchor, ...comment }) => ({ ...comment, anchor: JSON.parse(anchor) as Anchor }));
}

/** What a class log is about, without the log, which is long. */
export interface LoggedClass {
  /** Its session; one that differs from an earlier log of its session has that and, after a dot, its device. */
  readonly key: string;
  readonly planId: string;
  readonly roomId: string;
  /** By the device's clock, ms since the epoch. */
  readonly startedAt: number;
}

/** The newest `most` classes of the studio, without rehearsals, the newest first. */
export function listNewestClasses(db: Db, most: number): LoggedClass[] {
  const { sessionId: key, planId, roomId, startedAt } = classLogTable;
  const rows = db.orm.select({ key, planId, roomId, startedAt }).from(classLogTable);
  return rows.where(eq(classLogTable.kind, "class")).orderBy(desc(classLogTable.receivedAt)).limit(most).all();
}

/** Titles by plan, deleted ones too. */
export const titlesById = (db: Db): Map<string, string> =>
  new Map(
    db.orm
      .select({ id: planTable.id, title: planTable.title })
      .from(planTable)
      .all()
      .map(({ id, title }) => [id, title]),
  );
