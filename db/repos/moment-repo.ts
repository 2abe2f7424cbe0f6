/** Moments of a plan: what it was at each step of its rounds. Only added to; the database itself refuses anything else. */
import { and, asc, desc, eq, sql } from "drizzle-orm";
import type { Db } from "#db/connection.ts";
import { oncePerDatabase } from "#db/once-per-database.ts";
import { planMomentTable, planTextTable } from "#db/review-schema.ts";
import type { FindingLevel } from "#lib/plan/schema.ts";
import type { MomentKind, ThreadThen } from "#lib/rounds/rounds.ts";
import type { Finding } from "#lib/rules/define/types.ts";
import { addSourceToRecord } from "./record-repo.ts";

export interface MomentRow {
  readonly id: number;
  readonly planId: string;
  /** 0: before the first round that was kept. */
  readonly round: number;
  readonly kind: MomentKind;
  /** ms since the epoch. */
  readonly at: number;
  readonly actorId: string;
  readonly note: string | null;
  /** SHA-256 (hex) of the plan's canonical JSON; empty when the plan could not be read. */
  readonly hash: string;
  readonly findings: readonly Finding[];
  readonly threads: readonly ThreadThen[];
}

export interface NewMoment extends Omit<MomentRow, "id"> {
  /** Canonical JSON with that hash; null when the plan could not be read. */
  readonly planJson: string | null;
}

export function insertMoment(db: Db, { planJson, findings, threads, ...moment }: NewMoment): number {
  const { planId, hash } = moment;
  if (planJson !== null && readPlanText(db, planId, hash) === undefined) {
    db.orm.insert(planTextTable).values({ planId, hash, planJson }).run();
  }
  const row = { ...moment, findingsJson: JSON.stringify(findings), threadsJson: JSON.stringify(threads) };
  const kept = db.orm.insert(planMomentTable).values(row).returning().get();
  addSourceToRecord(db, "moment", { ...kept, planJson: readPlanText(db, planId, hash) ?? null });
  return kept.id;
}

/** A moment without what stood in it: how much there was. */
export interface MomentBrief extends Omit<MomentRow, "findings" | "threads"> {
  /** Findings by level. */
  readonly must: number;
  readonly look: number;
  readonly info: number;
  readonly threads: number;
  readonly openThreads: number;
}

/** How often a fixed text stands in a column. */
const countIn = (column: string, text: string): string =>
  `(length(${column}) - length(replace(${column}, '${text}', ''))) / ${text.length}`;

/** A finding's level as insertMoment writes it; in words or values the quotes would be escaped, and no list follows. */
const countOfLevel = (level: FindingLevel): string => countIn("findings_json", `"level":"${level}","items":[`);

const briefs = oncePerDatabase(({ raw }) =>
  raw.prepare<[string], MomentBrief>(
    `SELECT id, plan_id AS planId, round, kind, at, actor_id AS actorId, note, hash,
            ${countOfLevel("must")} AS must, ${countOfLevel("look")} AS look, ${countOfLevel("info")} AS info,
            ${countIn("threads_json", '"settled":')} AS threads,
            ${countIn("threads_json", '"settled":false')} AS openThreads
       FROM plan_moment WHERE plan_id = ? ORDER BY id`,
  ),
);

/**
 * In the order in which they happened. A plan that is offered and taken back again keeps all its threads each time, so they
 * are counted where they are stored, and not read.
 */
export const listMomentBriefs = (db: Db, planId: string): MomentBrief[] => briefs(db).all(planId);

/** In the order in which they happened. */
export function listMoments(db: Db, planId: string): MomentRow[] {
  const rows = db.orm.select().from(planMomentTable).where(eq(planMomentTable.planId, planId));
  return rows.orderBy(asc(planMomentTable.id)).all().map(toMoment);
}

export function readMomentRow(db: Db, planId: string, id: number): MomentRow | undefined {
  const one = and(eq(planMomentTable.planId, planId), eq(planMomentTable.id, id));
  const row = db.orm.select().from(planMomentTable).where(one).get();
  return row && toMoment(row);
}

/** Runs for every page that joins a plan. */
const newestId = oncePerDatabase(({ orm }) =>
  orm
    .select({ id: planMomentTable.id })
    .from(planMomentTable)
    .where(eq(planMomentTable.planId, sql.placeholder("planId")))
    .orderBy(desc(planMomentTable.id))
    .limit(1)
    .prepare(),
);

/** Null before the first. */
export const newestMomentId = (db: Db, planId: string): number | null => newestId(db).get({ planId })?.id ?? null;

/** Canonical JSON of a plan; undefined when none was kept with this hash. */
export function readPlanText(db: Db, planId: string, hash: string): string | undefined {
  const one = and(eq(planTextTable.planId, planId), eq(planTextTable.hash, hash));
  return db.orm.select({ planJson: planTextTable.planJson }).from(planTextTable).where(one).get()?.planJson;
}

function toMoment({ findingsJson, threadsJson, ...row }: typeof planMomentTable.$inferSelect): MomentRow {
  // Both written by insertMoment only.
  return {
    ...row,
    findings: JSON.parse(findingsJson) as Finding[],
    threads: JSON.parse(threadsJson) as ThreadThen[],
  };
}
