/** The record of a plan: who did what to it, and when. Append-only; the database refuses anything else. */
import { and, asc, eq } from "drizzle-orm";
import type { Db } from "#db/connection.ts";
import { planEventTable } from "#db/schema.ts";
import { wellFormed } from "#lib/record/chain.ts";
import { addSourceToRecord } from "./record-repo.ts";

export type PlanEventKind =
  | "created"
  | "imported"
  | "duplicated"
  /** The example class that every new studio may have. */
  | "from-example"
  /** From an edition; the note is "<plan id>/<number>". */
  | "from-edition"
  | "handed-in"
  | "taken-back"
  | "handed-back"
  | "signed-off"
  /** Somebody wrote in a signed plan, which is in writing again. */
  | "written-on"
  | "shared"
  | "unshared"
  | "team-on"
  | "team-off"
  | "room-changed"
  | "deleted"
  | "restored"
  | "archived"
  | "unarchived"
  /** An edition, identified by its hash; the note is the reason. */
  | "withdrawn";

export interface PlanEvent {
  readonly planId: string;
  /** ms since the epoch. */
  readonly at: number;
  readonly actorId: string;
  readonly kind: PlanEventKind;
  /** A note by the actor, or the id of the person or thing that it was about. */
  readonly note?: string | null;
  /** SHA-256 (hex) of the plan at that moment, where it matters. */
  readonly hash?: string | null;
}

/** Inside the caller's transaction. It stands in the chained record too. */
export function addPlanEvent(db: Db, event: PlanEvent): void {
  const { note, hash = null } = event;
  const kept = { ...event, note: note ? wellFormed(note) : null, hash };
  addSourceToRecord(db, "plan event", db.orm.insert(planEventTable).values(kept).returning().get());
}

/** In chronological order. */
export function listPlanEvents(db: Db, planId: string): PlanEvent[] {
  const rows = db.orm
    .select()
    .from(planEventTable)
    .where(eq(planEventTable.planId, planId))
    .orderBy(asc(planEventTable.id))
    .all();
  return rows.map((row) => ({ ...row, kind: row.kind as PlanEventKind })); // written by addPlanEvent only
}

/** The ids of all plans that began in this way, deleted ones included. */
export function planIdsMade(db: Db, kind: PlanEventKind, actorId?: string): Set<string> {
  const by = actorId === undefined ? undefined : eq(planEventTable.actorId, actorId);
  const rows = db.orm.select({ id: planEventTable.planId }).from(planEventTable);
  return new Set(
    rows
      .where(and(eq(planEventTable.kind, kind), by))
      .all()
      .map(({ id }) => id),
  );
}
