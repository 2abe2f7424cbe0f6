/** Updates a month document written by an older version. Never drops a key. */
import type * as Y from "yjs";
import { type DocMigration, type Migration, migrate } from "#lib/doc/migrate.ts";
import { MONTH_DOC_VERSION } from "./layout.ts";

/** Version 1 is the first, so there are no steps yet. */
const MONTH_STEPS: readonly DocMigration[] = [];

/** Runs the steps that a month document still needs. A document newer than this program is left untouched. */
export function migrateMonth(
  doc: Y.Doc,
  steps: readonly DocMigration[] = MONTH_STEPS,
  current: number = MONTH_DOC_VERSION,
): Migration {
  return migrate(doc, steps, current);
}
