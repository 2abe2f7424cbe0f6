/**
 * Plans as rows: their owner, their readers, their state. The content of a plan is in its document; title and length here
 * are copies for lists. Every function is synchronous; callers provide the transaction.
 */
import { and, asc, desc, eq, inArray, sql } from "drizzle-orm";
import type { Db } from "#db/connection.ts";
import { oncePerDatabase } from "#db/once-per-database.ts";
import { docUpdateTable, planAuthorTable, planShareTable, planTable } from "#db/schema.ts";
import type { PlanState } from "#lib/protocol/messages.ts";

export interface PlanRow {
  readonly id: string;
  readonly title: string;
  readonly lengthSeconds: number;
  readonly ownerId: string;
  readonly roomId: string;
  readonly team: boolean;
  readonly state: PlanState;
  readonly handedInBy: string | null;
  /** ms since the epoch, as are all times here. */
  readonly handedInAt: number | null;
  /** The note of the last hand-in, hand-back or sign-off. */
  readonly stateNote: string | null;
  readonly createdAt: number;
  readonly updatedAt: number;
  readonly deletedAt: number | null;
  readonly archivedAt: number | null;
  /** The edition that it was made from, as "<plan id>/<number>". */
  readonly origin: string | null;
  /** Ids of the people it is shared with, in order of id. */
  readonly sharedWith: readonly string[];
}

export type NewPlanRow = Pick<PlanRow, "id" | "title" | "lengthSeconds" | "ownerId" | "roomId" | "team"> &
  Partial<Pick<PlanRow, "origin">> & {
    readonly at: number;
  };

export function insertPlan(db: Db, made: NewPlanRow): void {
  const { at, ...row } = made;
  db.orm
    .insert(planTable)
    .values({ ...row, createdAt: at, updatedAt: at })
    .run();
}

const prepareAll = ({ orm, raw }: Db) => ({
  addAuthor: raw.prepare(
    "insert into plan_author (plan_id, user_id, first_at) values (?, ?, ?) on conflict do nothing",
  ),
  refresh: raw.prepare<[{ id: string; title: string; lengthSeconds: number; at: number }]>(
    "update plan set title = @title, length_seconds = @lengthSeconds, updated_at = @at where id = @id",
  ),
  row: orm
    .select()
    .from(planTable)
    .where(eq(planTable.id, sql.placeholder("id")))
    .prepare(),
  shares: orm
    .select({ userId: planShareTable.userId })
    .from(planShareTable)
    .where(eq(planShareTable.planId, sql.placeholder("id")))
    .orderBy(asc(planShareTable.userId))
    .prepare(),
});
const statements = oncePerDatabase(prepareAll);

/** One plan, also a deleted one. Read for every open document twice a second: two keyed reads, prepared once. */
export function readPlanRow(db: Db, id: string): PlanRow | undefined {
  const row = statements(db).row.get({ id });
  return row && { ...row, sharedWith: sharesOf(db, id) };
}

/** Every plan, including deleted ones, the last changed first. */
export function listPlanRows(db: Db): PlanRow[] {
  const shares = new Map<string, string[]>();
  for (const { planId, userId } of db.orm.select().from(planShareTable).orderBy(asc(planShareTable.userId)).all()) {
    shares.set(planId, [...(shares.get(planId) ?? []), userId]);
  }
  const rows = db.orm.select().from(planTable).orderBy(desc(planTable.updatedAt), asc(planTable.id)).all();
  return rows.map((row) => ({ ...row, sharedWith: shares.get(row.id) ?? [] }));
}

/** The plans with these ids that are not deleted; unknown ids are skipped. */
export function readPlanRows(db: Db, ids: readonly string[]): PlanRow[] {
  if (ids.length === 0) return [];
  const rows = db.orm
    .select()
    .from(planTable)
    .where(inArray(planTable.id, [...ids]))
    .all();
  return rows.filter((row) => row.deletedAt === null).map((row) => ({ ...row, sharedWith: sharesOf(db, row.id) }));
}

const MAX_LISTED_TITLE = 200;

/** Stores copies of the document's title and length. False when neither has changed. */
export function refreshHead(db: Db, id: string, now: { title: string; lengthSeconds: number; at: number }): boolean {
  // A list only shows one line; the document keeps whatever was pasted into its title.
  const head = { ...now, title: now.title.slice(0, MAX_LISTED_TITLE) };
  const row = statements(db).row.get({ id });
  if (!row) return false;
  const changed = row.title !== head.title || row.lengthSeconds !== head.lengthSeconds;
  statements(db).refresh.run({ ...head, id });
  return changed;
}

export interface StateChange {
  readonly state: PlanState;
  readonly note: string | null;
  readonly handedInBy?: string | null;
  readonly handedInAt?: number | null;
}

export function setPlanState(db: Db, id: string, change: StateChange): void {
  const { state, note, handedInBy = null, handedInAt = null } = change;
  db.orm.update(planTable).set({ state, stateNote: note, handedInBy, handedInAt }).where(eq(planTable.id, id)).run();
}

export function setPlanTeam(db: Db, id: string, team: boolean): void {
  db.orm.update(planTable).set({ team }).where(eq(planTable.id, id)).run();
}

export function setPlanRoom(db: Db, id: string, roomId: string): void {
  db.orm.update(planTable).set({ roomId }).where(eq(planTable.id, id)).run();
}

/** Null restores a deleted plan. */
export function setPlanDeleted(db: Db, id: string, at: number | null): void {
  db.orm.update(planTable).set({ deletedAt: at }).where(eq(planTable.id, id)).run();
}

/** Null restores an archived plan. */
export function setPlanArchived(db: Db, id: string, at: number | null): void {
  db.orm.update(planTable).set({ archivedAt: at }).where(eq(planTable.id, id)).run();
}

export function sharePlanRow(db: Db, planId: string, userId: string): void {
  db.orm.insert(planShareTable).values({ planId, userId }).onConflictDoNothing().run();
}

export function unsharePlanRow(db: Db, planId: string, userId: string): void {
  const one = and(eq(planShareTable.planId, planId), eq(planShareTable.userId, userId));
  db.orm.delete(planShareTable).where(one).run();
}

/** Ids of everybody who has written in a plan, in the order of their first change. */
export function readPlanAuthors(db: Db, planId: string): string[] {
  const rows = db.orm.select().from(planAuthorTable).where(eq(planAuthorTable.planId, planId));
  return rows
    .orderBy(asc(planAuthorTable.firstAt), asc(planAuthorTable.userId))
    .all()
    .map((row) => row.userId);
}

/** Id of the person who wrote in a plan last; undefined once those rows have been folded into a snapshot. */
export function readLastWriter(db: Db, planId: string): string | undefined {
  const rows = db.orm
    .select({ id: docUpdateTable.actorId })
    .from(docUpdateTable)
    .where(eq(docUpdateTable.name, `plan/${planId}`));
  return rows.orderBy(desc(docUpdateTable.seq)).limit(1).get()?.id;
}

function sharesOf(db: Db, planId: string): string[] {
  return statements(db)
    .shares.all({ id: planId })
    .map((row) => row.userId);
}

/** Records that somebody wrote in a plan; only the first time is kept. */
export function noteAuthor(db: Db, planId: string, userId: string, at: number): void {
  statements(db).addAuthor.run(planId, userId, at);
}
