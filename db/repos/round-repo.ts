/** Rounds of reading. A round has one beginning and at most one end; once it has ended it is not changed any more. */
import { and, asc, desc, eq, isNull, sql } from "drizzle-orm";
import type { Db } from "#db/connection.ts";
import { oncePerDatabase } from "#db/once-per-database.ts";
import { planRoundTable } from "#db/review-schema.ts";
import type { RoundOutcome } from "#lib/rounds/rounds.ts";

export interface RoundRow {
  readonly planId: string;
  /** 1, 2, ... */
  readonly number: number;
  readonly offeredBy: string;
  /** ms since the epoch, as are all times here. */
  readonly offeredAt: number;
  readonly readerId: string | null;
  readonly readSince: number | null;
  /** Null while it is open. */
  readonly outcome: RoundOutcome | null;
  readonly endedBy: string | null;
  readonly endedAt: number | null;
  readonly mainPoints: readonly string[];
  /** The edition that it ended in. */
  readonly edition: number | null;
}

export function insertRound(db: Db, made: Pick<RoundRow, "planId" | "number" | "offeredBy" | "offeredAt">): void {
  db.orm.insert(planRoundTable).values(made).run();
}

/** Runs for every page that joins a plan. */
const newest = oncePerDatabase(({ orm }) =>
  orm
    .select()
    .from(planRoundTable)
    .where(eq(planRoundTable.planId, sql.placeholder("planId")))
    .orderBy(desc(planRoundTable.number))
    .limit(1)
    .prepare(),
);

export function newestRound(db: Db, planId: string): RoundRow | undefined {
  const row = newest(db).get({ planId });
  return row && toRound(row);
}

/** The first round first. */
export function listRounds(db: Db, planId: string): RoundRow[] {
  const rows = db.orm.select().from(planRoundTable).where(eq(planRoundTable.planId, planId));
  return rows.orderBy(asc(planRoundTable.number)).all().map(toRound);
}

/** Null: nobody reads it any more. Of an open round only. */
export function setReader(db: Db, round: Pick<RoundRow, "planId" | "number">, reader: Reader | null): void {
  const set = { readerId: reader?.id ?? null, readSince: reader?.since ?? null };
  db.orm.update(planRoundTable).set(set).where(openOne(round)).run();
}

interface Reader {
  readonly id: string;
  readonly since: number;
}

export interface RoundEnd {
  readonly outcome: RoundOutcome;
  readonly endedBy: string;
  readonly endedAt: number;
  readonly mainPoints: readonly string[];
  readonly edition: number | null;
}

/** False when it had ended before. */
export function endRoundRow(db: Db, round: Pick<RoundRow, "planId" | "number">, end: RoundEnd): boolean {
  const { mainPoints, ...rest } = end;
  const set = { ...rest, mainPointsJson: JSON.stringify(mainPoints) };
  return db.orm.update(planRoundTable).set(set).where(openOne(round)).run().changes === 1;
}

const openOne = ({ planId, number }: Pick<RoundRow, "planId" | "number">) =>
  and(eq(planRoundTable.planId, planId), eq(planRoundTable.number, number), isNull(planRoundTable.outcome));

function toRound({ mainPointsJson, ...row }: typeof planRoundTable.$inferSelect): RoundRow {
  return { ...row, mainPoints: JSON.parse(mainPointsJson) as string[] }; // written by endRoundRow only
}
