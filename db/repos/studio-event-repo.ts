/** The studio's record: who changed standards, machines or access, and when. Append-only. */
import { and, desc, eq } from "drizzle-orm";
import type { Db } from "#db/connection.ts";
import { oncePerDatabase } from "#db/once-per-database.ts";
import { studioEventTable } from "#db/schema.ts";
import type { Spring } from "#lib/plan/schema.ts";
import { addSourceToRecord } from "./record-repo.ts";

export type StudioEventKind =
  | "standard"
  | "machines"
  | "spring"
  | "spring-out"
  | "timings"
  | "timings-taken"
  /** The subject is the person whose password a reset link is for. */
  | "reset-link"
  | "reset-asked"
  | "reset-link-withdrawn"
  | "password-reset"
  /** Unused links and codes of the person that is the subject ended, because they lost the right to make them. */
  | "links-ended";

export interface StudioEvent {
  readonly at: number;
  readonly actorId: string;
  readonly kind: StudioEventKind;
  /** Id of the rule, the room or the person. */
  readonly subject: string;
  /** The new value, as JSON; null: back to the rule's own. */
  readonly data: unknown;
}

/** Inside the caller's transaction. It stands in the chained record too. */
export function addStudioEvent(db: Db, event: StudioEvent): void {
  const { data, ...rest } = event;
  const kept = { ...rest, dataJson: JSON.stringify(data) };
  addSourceToRecord(db, "studio event", db.orm.insert(studioEventTable).values(kept).returning().get());
}

/** The newest event of one kind about one subject. */
export function lastStudioEvent(db: Db, kind: StudioEventKind, subject: string): StudioEvent | undefined {
  const of = and(eq(studioEventTable.kind, kind), eq(studioEventTable.subject, subject));
  const row = db.orm.select().from(studioEventTable).where(of).orderBy(desc(studioEventTable.id)).limit(1).get();
  return row && { at: row.at, actorId: row.actorId, kind, subject, data: JSON.parse(row.dataJson) as unknown };
}

/** Runs for every page that joins a plan. */
const takenOut = oncePerDatabase(({ orm }) =>
  orm
    .select()
    .from(studioEventTable)
    .where(eq(studioEventTable.kind, "spring-out"))
    .orderBy(desc(studioEventTable.id))
    .prepare(),
);

/** Springs that were removed from a room, with their last values, the last removed first. */
export function springsTakenOut(db: Db): { readonly roomId: string; readonly spring: Spring }[] {
  return takenOut(db)
    .all()
    .map((row) => ({ roomId: row.subject, spring: JSON.parse(row.dataJson) as Spring })); // written by manage-rooms only
}
