/** How each person wants dates and units written. Somebody who has chosen nothing has no row. */
import { eq, sql } from "drizzle-orm";
import type { Db } from "#db/connection.ts";
import { oncePerDatabase } from "#db/once-per-database.ts";
import { formatChoiceTable } from "#db/review-schema.ts";
import { NOTHING_OWN, type OwnFormats } from "#lib/formats/formats.ts";

/** Runs for every page of the workspace. */
const oneChoice = oncePerDatabase(({ orm }) =>
  orm
    .select()
    .from(formatChoiceTable)
    .where(eq(formatChoiceTable.userId, sql.placeholder("userId")))
    .prepare(),
);

export function readOwnFormats(db: Db, userId: string): OwnFormats {
  const row = oneChoice(db).get({ userId });
  return row ? { ...NOTHING_OWN, ...(JSON.parse(row.choicesJson) as Partial<OwnFormats>) } : NOTHING_OWN; // written below only
}

export function writeOwnFormats(db: Db, userId: string, own: OwnFormats): void {
  const chosen = Object.fromEntries(Object.entries(own).filter(([, value]) => value !== null));
  if (Object.keys(chosen).length === 0) {
    db.orm.delete(formatChoiceTable).where(eq(formatChoiceTable.userId, userId)).run();
    return;
  }
  const row = { userId, choicesJson: JSON.stringify(chosen) };
  db.orm.insert(formatChoiceTable).values(row).onConflictDoUpdate({ target: formatChoiceTable.userId, set: row }).run();
}
