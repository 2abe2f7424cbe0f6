/** Signed editions: written once, read for ever. The database itself refuses to change or delete one. */
import { and, count, desc, eq, max, sql } from "drizzle-orm";
import type { Db } from "#db/connection.ts";
import { edition } from "#db/schema.ts";
import type { CardEnvelope } from "#lib/card/schema.ts";
import type { Plan } from "#lib/plan/schema.ts";
import type { Finding } from "#lib/rules/types.ts";

/** What a list shows of an edition. */
export interface EditionHead {
  readonly planId: string;
  /** 1, 2, ... */
  readonly number: number;
  /** SHA-256 (hex) of the canonical plan. */
  readonly hash: string;
  readonly signedBy: string;
  /** ms since the epoch. */
  readonly signedAt: number;
  readonly note: string | null;
  /** The plan's, as signed. */
  readonly title: string;
  readonly lengthSeconds: number;
}
export interface Edition extends EditionHead {
  /** Canonical JSON (RFC 8785), byte for byte what was hashed. */
  readonly planJson: string;
  readonly card: CardEnvelope;
  readonly findings: readonly Finding[];
}

export function insertEdition(db: Db, made: Omit<Edition, "title" | "lengthSeconds">): void {
  const { card, findings, ...row } = made;
  db.orm
    .insert(edition)
    .values({ ...row, cardJson: JSON.stringify(card), findingsJson: JSON.stringify(findings) })
    .run();
}

export function readEdition(db: Db, planId: string, number: number): Edition | undefined {
  const one = and(eq(edition.planId, planId), eq(edition.number, number));
  const columns = {
    ...headColumns,
    planJson: edition.planJson,
    cardJson: edition.cardJson,
    findingsJson: edition.findingsJson,
  };
  const row = db.orm.select(columns).from(edition).where(one).get();
  if (!row) return undefined;
  const { cardJson, findingsJson, ...rest } = row; // written by insertEdition only
  return { ...rest, card: JSON.parse(cardJson) as CardEnvelope, findings: JSON.parse(findingsJson) as Finding[] };
}

const headColumns = {
  planId: edition.planId,
  number: edition.number,
  hash: edition.hash,
  signedBy: edition.signedBy,
  signedAt: edition.signedAt,
  note: edition.note,
  title: sql<string>`json_extract(${edition.planJson}, '$.title')`,
  lengthSeconds: sql<number>`json_extract(${edition.planJson}, '$.lengthSeconds')`,
};

/** The newest first. */
export function listEditions(db: Db, planId: string): EditionHead[] {
  const rows = db.orm.select(headColumns).from(edition).where(eq(edition.planId, planId));
  return rows.orderBy(desc(edition.number)).all();
}

export function newestEdition(db: Db, planId: string): EditionHead | undefined {
  return listEditions(db, planId)[0];
}

/** The plan of the newest edition, to compare the document with. */
export function newestEditionPlan(db: Db, planId: string): { hash: string; plan: Plan } | undefined {
  const rows = db.orm.select({ hash: edition.hash, planJson: edition.planJson }).from(edition);
  const row = rows.where(eq(edition.planId, planId)).orderBy(desc(edition.number)).limit(1).get();
  return row && { hash: row.hash, plan: JSON.parse(row.planJson) as Plan }; // checked when it was signed
}

/** Editions of all plans together: only ever grows. */
export const countEditions = (db: Db): number => db.orm.select({ n: count() }).from(edition).get()?.n ?? 0;

/** The number of the newest edition of every plan that has one. */
export function newestEditionNumbers(db: Db): Map<string, number> {
  const rows = db.orm
    .select({ planId: edition.planId, number: max(edition.number) })
    .from(edition)
    .groupBy(edition.planId)
    .all();
  return new Map(rows.map((row) => [row.planId, row.number ?? 0]));
}

/**
 * The cards a room's device gets: of every plan that is not deleted, the newest edition, if it was signed for this room
 * and is not withdrawn. No older edition takes the place of a withdrawn one: it was replaced for some reason too.
 * A plan that has moved to another room since keeps its last edition here until it is signed for the other one.
 */
export function newestCardsOfRoom(db: Db, roomId: string): CardEnvelope[] {
  const rows = db.raw
    .prepare<[string], { cardJson: string }>(
      `SELECT e.card_json AS cardJson FROM edition e JOIN plan p ON p.id = e.plan_id
        WHERE p.deleted_at IS NULL AND json_extract(e.card_json, '$.card.room.id') = ?
          AND e.number = (SELECT max(number) FROM edition WHERE plan_id = e.plan_id)
          AND NOT EXISTS (SELECT 1 FROM edition_withdrawal w WHERE w.plan_id = e.plan_id AND w.number = e.number)
        ORDER BY e.plan_id`,
    )
    .all(roomId);
  return rows.map((row) => JSON.parse(row.cardJson) as CardEnvelope); // written by insertEdition only
}
