/** Signed editions: written once, read for ever. The database itself refuses to change or delete one. */
import { and, count, desc, eq, max, sql } from "drizzle-orm";
import type { Db } from "#db/connection.ts";
import { oncePerDatabase } from "#db/once-per-database.ts";
import { edition } from "#db/schema.ts";
import { sha256Hex } from "#lib/canonical/canonical.ts";
import type { CardEnvelope } from "#lib/card/schema.ts";
import type { Plan } from "#lib/plan/schema.ts";
import type { Finding } from "#lib/rules/define/types.ts";

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

/** An edition as it is stored: nothing in it has been looked at. */
export interface EditionText extends EditionHead {
  readonly planJson: string;
  readonly cardJson: string;
  readonly findingsJson: string;
}

export function insertEdition(db: Db, made: Omit<Edition, "title" | "lengthSeconds">): void {
  const { card, findings, ...row } = made;
  db.orm
    .insert(edition)
    .values({ ...row, cardJson: JSON.stringify(card), findingsJson: JSON.stringify(findings) })
    .run();
}

/** For whoever may have an edition see `server/plans/sound-edition.ts`, which looks whether it is what was signed. */
export function readEditionText(db: Db, planId: string, number: number): EditionText | undefined {
  const one = and(eq(edition.planId, planId), eq(edition.number, number));
  const columns = {
    ...headColumns,
    planJson: edition.planJson,
    cardJson: edition.cardJson,
    findingsJson: edition.findingsJson,
  };
  return db.orm.select(columns).from(edition).where(one).get();
}

export function readEdition(db: Db, planId: string, number: number): Edition | undefined {
  const row = readEditionText(db, planId, number);
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
  // A row that was altered may be no JSON any more: its list is shown all the same.
  title: sql<string>`iif(json_valid(${edition.planJson}), json_extract(${edition.planJson}, '$.title'), '')`,
  lengthSeconds: sql<number>`iif(json_valid(${edition.planJson}), json_extract(${edition.planJson}, '$.lengthSeconds'), 0)`,
};

/** The newest first. */
export function listEditions(db: Db, planId: string): EditionHead[] {
  const rows = db.orm.select(headColumns).from(edition).where(eq(edition.planId, planId));
  return rows.orderBy(desc(edition.number)).all();
}

/** Asked for every page that joins a plan. */
const newest = oncePerDatabase(({ orm }) =>
  orm
    .select(headColumns)
    .from(edition)
    .where(eq(edition.planId, sql.placeholder("planId")))
    .orderBy(desc(edition.number))
    .limit(1)
    .prepare(),
);

export const newestEdition = (db: Db, planId: string): EditionHead | undefined => newest(db).get({ planId });

/** The plan of the newest edition, to compare the document with. */
export function newestEditionPlan(db: Db, planId: string): { hash: string; plan: Plan } | undefined {
  const rows = db.orm.select({ hash: edition.hash, planJson: edition.planJson }).from(edition);
  const row = rows.where(eq(edition.planId, planId)).orderBy(desc(edition.number)).limit(1).get();
  // Checked when it was signed; what is not that any more is nothing to compare with.
  return row && sha256Hex(row.planJson) === row.hash
    ? { hash: row.hash, plan: JSON.parse(row.planJson) as Plan }
    : undefined;
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
 * The editions whose cards a room's device gets: of every plan that is not deleted, the newest edition, if it was signed for
 * this room and is not withdrawn. No older edition takes the place of a withdrawn one: it was replaced for some reason too.
 * A plan that has moved to another room since keeps its last edition here until it is signed for the other one.
 */
export function newestEditionsOfRoom(db: Db, roomId: string): { readonly planId: string; readonly number: number }[] {
  return db.raw
    .prepare<[string], { planId: string; number: number }>(
      `SELECT e.plan_id AS planId, e.number FROM edition e JOIN plan p ON p.id = e.plan_id
        WHERE p.deleted_at IS NULL
          AND iif(json_valid(e.card_json), json_extract(e.card_json, '$.card.room.id'), NULL) = ?
          AND e.number = (SELECT max(number) FROM edition WHERE plan_id = e.plan_id)
          AND NOT EXISTS (SELECT 1 FROM edition_withdrawal w WHERE w.plan_id = e.plan_id AND w.number = e.number)
        ORDER BY e.plan_id`,
    )
    .all(roomId);
}
