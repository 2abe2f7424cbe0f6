/** Proposals: what a lead offered to change, and what became of it. */
import { and, count, desc, eq, inArray, isNull, sql } from "drizzle-orm";
import type { Db } from "#db/connection.ts";
import { oncePerDatabase } from "#db/once-per-database.ts";
import { proposalTable } from "#db/review-schema.ts";
import type { ProposalPart } from "#lib/proposal/parts.ts";

type ProposalState = (typeof proposalTable.$inferSelect)["state"];

export interface ProposalRow {
  readonly id: string;
  readonly planId: string;
  /** The item, or the heading of the block; null for the items before the first heading. */
  readonly itemId: string | null;
  readonly byId: string;
  /** ms since the epoch. */
  readonly at: number;
  readonly note: string | null;
  readonly parts: readonly ProposalPart[];
  readonly state: ProposalState;
  /** Ids of the parts that were taken; null before. */
  readonly taken: readonly string[] | null;
  readonly endedBy: string | null;
  readonly endedAt: number | null;
  readonly word: string | null;
}

export type NewProposal = Pick<ProposalRow, "id" | "planId" | "itemId" | "byId" | "at" | "note" | "parts">;
export type ProposalEnd = Pick<ProposalRow, "state" | "taken" | "endedBy" | "endedAt" | "word">;

export function insertProposal(db: Db, { parts, ...made }: NewProposal): void {
  db.orm
    .insert(proposalTable)
    .values({ ...made, partsJson: JSON.stringify(parts) })
    .run();
}

/** False, and nothing is written, where it is no longer as `was`. */
export function endProposal(db: Db, was: ProposalRow, { taken, ...end }: ProposalEnd): boolean {
  const { id, state, endedAt } = was;
  const takenJson = taken === null ? null : JSON.stringify(taken);
  const asRead = and(
    eq(proposalTable.id, id),
    eq(proposalTable.state, state),
    endedAt === null ? isNull(proposalTable.endedAt) : eq(proposalTable.endedAt, endedAt),
  );
  const { changes } = db.orm
    .update(proposalTable)
    .set({ ...end, takenJson })
    .where(asRead)
    .run();
  return changes === 1;
}

export function readProposal(db: Db, id: string): ProposalRow | undefined {
  const row = db.orm.select().from(proposalTable).where(eq(proposalTable.id, id)).get();
  return row && toRow(row);
}

/** Runs for every page that joins a plan. */
const newestStanding = oncePerDatabase(({ orm }) =>
  orm
    .select()
    .from(proposalTable)
    .where(
      and(
        eq(proposalTable.planId, sql.placeholder("planId")),
        inArray(proposalTable.state, ["open", "taken"] as const),
      ),
    )
    .orderBy(desc(proposalTable.at), sql`rowid desc`)
    .limit(sql.placeholder("most"))
    .prepare(),
);

/** Those that were not declined or withdrawn, the oldest first; of very many the newest `most`. */
export const listStandingProposals = (db: Db, planId: string, most: number): ProposalRow[] =>
  newestStanding(db).all({ planId, most }).map(toRow).reverse();

/** All of a plan, the oldest first. */
export function listProposals(db: Db, planId: string): ProposalRow[] {
  const rows = db.orm.select().from(proposalTable).where(eq(proposalTable.planId, planId));
  return rows.orderBy(proposalTable.at, sql`rowid`).all().map(toRow);
}

export function countOpenProposals(db: Db, planId: string): number {
  const open = and(eq(proposalTable.planId, planId), eq(proposalTable.state, "open"));
  return db.orm.select({ n: count() }).from(proposalTable).where(open).get()?.n ?? 0;
}

function toRow({ partsJson, takenJson, ...row }: typeof proposalTable.$inferSelect): ProposalRow {
  // Both were checked by server/proposals when they were written.
  const parts = JSON.parse(partsJson) as ProposalPart[];
  return { ...row, parts, taken: takenJson === null ? null : (JSON.parse(takenJson) as string[]) };
}
