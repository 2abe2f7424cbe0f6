/** Signed editions. Written once: the database itself refuses to change or delete one. */
import { and, count, desc, eq, max, sql } from "drizzle-orm";
import type { Db } from "#db/connection.ts";
import { oncePerDatabase } from "#db/once-per-database.ts";
import { editionTable } from "#db/schema.ts";
import { sha256Hex } from "#lib/canonical/canonical.ts";
import type { CardEnvelope } from "#lib/card/schema.ts";
import type { Plan } from "#lib/plan/schema.ts";
import type { AcceptanceView } from "#lib/protocol/messages.ts";
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
  /** Canonical JSON (RFC 8785), byte for byte as it was hashed. */
  readonly planJson: string;
  readonly card: CardEnvelope;
  readonly findings: readonly Finding[];
}

/** An edition as it is stored, not verified. */
export interface EditionText extends EditionHead {
  readonly planJson: string;
  readonly cardJson: string;
  readonly findingsJson: string;
}

/** `accepted`: findings that a lead had accepted as they stood when it was signed. */
export function insertEdition(
  db: Db,
  made: Omit<Edition, "title" | "lengthSeconds"> & { readonly accepted?: readonly AcceptanceView[] },
): void {
  const { card, findings, accepted = [], ...row } = made;
  const texts = { cardJson: JSON.stringify(card), findingsJson: JSON.stringify(findings) };
  db.orm
    .insert(editionTable)
    .values({ ...row, ...texts, acceptedJson: JSON.stringify(accepted) })
    .run();
}

/** Not verified: to serve an edition use `server/editions/sound-edition.ts`, which checks that it is what was signed. */
export function readEditionText(db: Db, planId: string, number: number): EditionText | undefined {
  const one = and(eq(editionTable.planId, planId), eq(editionTable.number, number));
  const columns = {
    ...headColumns,
    planJson: editionTable.planJson,
    cardJson: editionTable.cardJson,
    findingsJson: editionTable.findingsJson,
  };
  return db.orm.select(columns).from(editionTable).where(one).get();
}

export function readEdition(db: Db, planId: string, number: number): Edition | undefined {
  const row = readEditionText(db, planId, number);
  if (!row) return undefined;
  const { cardJson, findingsJson, ...rest } = row; // written by insertEdition only
  return { ...rest, card: JSON.parse(cardJson) as CardEnvelope, findings: JSON.parse(findingsJson) as Finding[] };
}

const headColumns = {
  planId: editionTable.planId,
  number: editionTable.number,
  hash: editionTable.hash,
  signedBy: editionTable.signedBy,
  signedAt: editionTable.signedAt,
  note: editionTable.note,
  // An altered row may not be JSON any more; the list is shown anyway.
  title: sql<string>`iif(json_valid(${editionTable.planJson}), json_extract(${editionTable.planJson}, '$.title'), '')`,
  lengthSeconds: sql<number>`iif(json_valid(${editionTable.planJson}), json_extract(${editionTable.planJson}, '$.lengthSeconds'), 0)`,
};

/** The newest first. */
export function listEditions(db: Db, planId: string): EditionHead[] {
  const rows = db.orm.select(headColumns).from(editionTable).where(eq(editionTable.planId, planId));
  return rows.orderBy(desc(editionTable.number)).all();
}

/** Runs for every page that joins a plan. */
const newest = oncePerDatabase(({ orm }) =>
  orm
    .select(headColumns)
    .from(editionTable)
    .where(eq(editionTable.planId, sql.placeholder("planId")))
    .orderBy(desc(editionTable.number))
    .limit(1)
    .prepare(),
);

export const newestEdition = (db: Db, planId: string): EditionHead | undefined => newest(db).get({ planId });

/** The plan of the newest edition, to compare the document with. */
export function newestEditionPlan(db: Db, planId: string): { hash: string; plan: Plan } | undefined {
  const rows = db.orm.select({ hash: editionTable.hash, planJson: editionTable.planJson }).from(editionTable);
  const row = rows.where(eq(editionTable.planId, planId)).orderBy(desc(editionTable.number)).limit(1).get();
  // An edition that is no longer what was signed cannot be compared with.
  return row && sha256Hex(row.planJson) === row.hash
    ? { hash: row.hash, plan: JSON.parse(row.planJson) as Plan }
    : undefined;
}

/** The number of all editions; it only grows. */
export const countEditions = (db: Db): number => db.orm.select({ n: count() }).from(editionTable).get()?.n ?? 0;

/** The number of the newest edition of every plan that has one. */
export function newestEditionNumbers(db: Db): Map<string, number> {
  const rows = db.orm
    .select({ planId: editionTable.planId, number: max(editionTable.number) })
    .from(editionTable)
    .groupBy(editionTable.planId)
    .all();
  return new Map(rows.map((row) => [row.planId, row.number ?? 0]));
}

/**
 * The editions whose cards a room's devices receive: the newest edition of every plan that is not deleted, if it was signed
 * for this room and is not withdrawn. A withdrawn edition is not replaced by an older one, which was superseded for a reason
 * too. A plan that has moved to another room keeps its last edition here until it is signed for the other room.
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
