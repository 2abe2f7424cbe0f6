/** The house's record: who changed which standard or which machines, when. Only ever added to. */
import { and, desc, eq } from "drizzle-orm";
import type { Db } from "#db/connection.ts";
import { oncePerDatabase } from "#db/once-per-database.ts";
import { studioEventTable } from "#db/schema.ts";
import type { Spring } from "#lib/plan/schema.ts";

export type StudioEventKind =
  | "standard"
  | "machines"
  | "spring"
  | "spring-out"
  | "timings"
  | "timings-taken"
  /** A reset link was made for the person that is the subject; their password was changed through it. */
  | "reset-link"
  | "reset-link-withdrawn"
  | "password-reset"
  /** What the person that is the subject had made and nobody had used ended with their right to make it. */
  | "links-ended";

export interface StudioEvent {
  readonly at: number;
  readonly actorId: string;
  readonly kind: StudioEventKind;
  /** Id of the rule, the room or the person. */
  readonly subject: string;
  /** What it was changed to, as JSON holds it; null: back to the rule's own. */
  readonly data: unknown;
}

export function addStudioEvent(db: Db, event: StudioEvent): void {
  const { data, ...rest } = event;
  db.orm
    .insert(studioEventTable)
    .values({ ...rest, dataJson: JSON.stringify(data) })
    .run();
}

/** The newest of one kind about one subject. */
export function lastStudioEvent(db: Db, kind: StudioEventKind, subject: string): StudioEvent | undefined {
  const of = and(eq(studioEventTable.kind, kind), eq(studioEventTable.subject, subject));
  const row = db.orm.select().from(studioEventTable).where(of).orderBy(desc(studioEventTable.id)).limit(1).get();
  return row && { at: row.at, actorId: row.actorId, kind, subject, data: JSON.parse(row.dataJson) as unknown };
}

/** Asked for every page that joins a plan. */
const takenOut = oncePerDatabase(({ orm }) =>
  orm
    .select()
    .from(studioEventTable)
    .where(eq(studioEventTable.kind, "spring-out"))
    .orderBy(desc(studioEventTable.id))
    .prepare(),
);

/** Springs that were taken out of a room, as they were then, the last taken out first. */
export function springsTakenOut(db: Db): { readonly roomId: string; readonly spring: Spring }[] {
  return takenOut(db)
    .all()
    .map((row) => ({ roomId: row.subject, spring: JSON.parse(row.dataJson) as Spring })); // written by manage-rooms only
}
