/** Restores a backup into an empty folder and opens it as the server would, to know that it can be relied on. */
import { join } from "node:path";
import { openDatabase } from "#db/connection.ts";
import { factsDiffer, factsOf } from "#db/file/copy.ts";
import { DATABASE_ENTRY, SECRET_ENTRY } from "./archive.ts";
import { BackupRefused } from "./backup-refused.ts";
import { restoreBackup } from "./restore-backup.ts";

/**
 * `folder` is empty and holds the studio afterwards. The rows of each table and the end of the record are compared with what
 * the database held while it was copied. Throws BackupRefused when the backup does not hold what it should.
 */
export async function testRestore(file: string, folder: string, at: Date): Promise<void> {
  const databaseFile = join(folder, DATABASE_ENTRY);
  const place = { dataDir: folder, databaseFile, secretFile: join(folder, SECRET_ENTRY), givenSecret: undefined };
  const { manifest } = await restoreBackup(place, file, at);
  openDatabase(databaseFile).close();
  const differs = manifest?.holds && factsDiffer(manifest.holds, factsOf(databaseFile));
  if (differs) throw new BackupRefused(`${file} does not hold what it should: ${differs}.`);
}
