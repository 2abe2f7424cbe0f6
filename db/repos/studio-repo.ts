/** The studio of this installation, its standards and its policy. */
import { eq } from "drizzle-orm";
import { organizationTable } from "#db/auth-schema.ts";
import type { Db } from "#db/connection.ts";
import { oncePerDatabase } from "#db/once-per-database.ts";
import { studioTable } from "#db/schema.ts";
import type { Standards } from "#lib/plan/schema.ts";

const ONLY = 1;
/** The studio's id in the sign-in library: a constant, since there is only one studio. */
export const ORGANIZATION_ID = "studio";

export interface Studio {
  readonly name: string;
  readonly town: string;
  readonly standards: Standards;
  /** Whether people may sign off a plan that only they wrote. */
  readonly soleAuthorMaySign: boolean;
  /** ms since the epoch. */
  readonly madeAt: number;
}

/** Runs for every page that joins a plan. */
const onlyStudio = oncePerDatabase(({ orm }) =>
  orm.select().from(studioTable).where(eq(studioTable.id, ONLY)).prepare(),
);

/** Undefined until the first run. */
export function readStudio(db: Db): Studio | undefined {
  const row = onlyStudio(db).get();
  return (
    row && {
      name: row.name,
      town: row.town,
      standards: JSON.parse(row.standardsJson) as Standards, // written by writeStandards only
      soleAuthorMaySign: row.soleAuthorMaySign,
      madeAt: row.createdAt,
    }
  );
}

export const studioExists = (db: Db): boolean => readStudio(db) !== undefined;

/** Creates the studio. A second one violates the primary key, which ends the surrounding transaction. */
export function insertStudio(
  db: Db,
  made: { name: string; town: string; soleAuthorMaySign: boolean; at: number },
): void {
  db.orm
    .insert(studioTable)
    .values({
      id: ONLY,
      name: made.name,
      town: made.town,
      soleAuthorMaySign: made.soleAuthorMaySign,
      createdAt: made.at,
    })
    .run();
  db.orm
    .insert(organizationTable)
    .values({ id: ORGANIZATION_ID, name: made.name, slug: ORGANIZATION_ID, createdAt: new Date(made.at) })
    .run();
}

export function writeStandards(db: Db, standards: Standards): void {
  db.orm
    .update(studioTable)
    .set({ standardsJson: JSON.stringify(standards) })
    .where(eq(studioTable.id, ONLY))
    .run();
}

/** Where the sign-in library keeps the name too. */
export function writeStudioName(db: Db, { name, town }: { readonly name: string; readonly town: string }): void {
  db.orm.update(studioTable).set({ name, town }).where(eq(studioTable.id, ONLY)).run();
  db.orm.update(organizationTable).set({ name }).where(eq(organizationTable.id, ORGANIZATION_ID)).run();
}

export function writeSoleAuthorMaySign(db: Db, may: boolean): void {
  db.orm.update(studioTable).set({ soleAuthorMaySign: may }).where(eq(studioTable.id, ONLY)).run();
}

/** What a database file is for, stored in its header so that it stays with the file. */
export type DatabasePurpose = "real" | "demo" | "demo-unfinished";
const MARKS: Readonly<Record<DatabasePurpose, number>> = { real: 0, demo: 0x53504c44, "demo-unfinished": 0x53504c55 };

export function readPurpose(db: Db): DatabasePurpose {
  const id = db.raw.pragma("application_id", { simple: true });
  if (id === MARKS.demo) return "demo";
  return id === MARKS["demo-unfinished"] ? "demo-unfinished" : "real";
}

export function writePurpose(db: Db, mark: DatabasePurpose): void {
  db.raw.pragma(`application_id = ${MARKS[mark]}`);
}
