/** Marks by the studio's rubric. Append-only; of several about the same round or class the newest counts. */
import { and, asc, desc, eq, sql } from "drizzle-orm";
import type { Db } from "#db/connection.ts";
import { marksTable, planRoundTable } from "#db/review-schema.ts";
import type { Levels, Rubric } from "#lib/rubric/rubric.ts";
import { addSourceToRecord } from "./record-repo.ts";

export interface StoredMarks {
  readonly id: string;
  /** Whom they are about. */
  readonly userId: string;
  readonly planId: string;
  /** The round of reading, or null for a class that was taught. */
  readonly round: number | null;
  /** The session of the class log, or null for a round. */
  readonly sessionId: string | null;
  readonly byId: string;
  /** ms since the epoch. */
  readonly at: number;
  /** The rubric as it was then. */
  readonly rubric: Rubric;
  readonly levels: Levels;
  readonly sentence: string;
}

/** Call inside a transaction. */
export function insertMarks(db: Db, { rubric, levels, ...marks }: StoredMarks): void {
  const row = { ...marks, rubricJson: JSON.stringify(rubric), levelsJson: JSON.stringify(levels) };
  addSourceToRecord(db, "marks", db.orm.insert(marksTable).values(row).returning().get());
}

/** All that were ever set about a person, the oldest first. */
export const listMarksOf = (db: Db, userId: string): StoredMarks[] =>
  db.orm.select().from(marksTable).where(eq(marksTable.userId, userId)).orderBy(asc(marksTable.at)).all().map(toMarks);

/** All that were ever set on a plan's rounds and classes, the oldest first. */
export const listMarksOn = (db: Db, planId: string): StoredMarks[] =>
  db.orm.select().from(marksTable).where(eq(marksTable.planId, planId)).orderBy(asc(marksTable.at)).all().map(toMarks);

/** Whether no other marks were set on the plan since. */
export const isNewestMarks = (db: Db, planId: string, id: string): boolean =>
  db.orm
    .select({ id: marksTable.id })
    .from(marksTable)
    .where(eq(marksTable.planId, planId))
    .orderBy(desc(marksTable.at), desc(sql`rowid`))
    .limit(1)
    .get()?.id === id;

// Both JSON columns are written by insertMarks only.
const toMarks = ({ rubricJson, levelsJson, ...row }: typeof marksTable.$inferSelect): StoredMarks => ({
  ...row,
  rubric: JSON.parse(rubricJson) as Rubric,
  levels: JSON.parse(levelsJson) as Levels,
});

/** Who offered the plan for that round; undefined when there is no such round. */
export const readOfferer = (db: Db, planId: string, round: number): string | undefined =>
  db.orm
    .select({ id: planRoundTable.offeredBy })
    .from(planRoundTable)
    .where(and(eq(planRoundTable.planId, planId), eq(planRoundTable.number, round)))
    .get()?.id;

export interface RoundBrief {
  readonly number: number;
  readonly offeredBy: string;
  /** ms since the epoch. */
  readonly offeredAt: number;
  readonly outcome: "returned" | "signed" | "taken-back" | null;
}

/** Rounds that can be marked, the newest first. */
export const listRoundBriefs = (db: Db, planId: string): RoundBrief[] =>
  db.orm
    .select({
      number: planRoundTable.number,
      offeredBy: planRoundTable.offeredBy,
      offeredAt: planRoundTable.offeredAt,
      outcome: planRoundTable.outcome,
    })
    .from(planRoundTable)
    .where(eq(planRoundTable.planId, planId))
    .orderBy(desc(planRoundTable.number))
    .all();
