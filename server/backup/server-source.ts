/** What the running server backs up, and whom it tells when it cannot. */
import { join } from "node:path";
import { countUnseenNotices } from "#db/repos/notice-repo.ts";
import { listMembers } from "#db/repos/people-repo.ts";
import { inTransaction } from "#db/transaction.ts";
import { can } from "#lib/policy/can.ts";
import type { Springline } from "#server/context/springline.ts";
import { tell } from "#server/notices/tell.ts";
import { SECRET_ENTRY } from "./archive.ts";
import type { BackupSource } from "./make-backup.ts";

/** With the secret that the server runs with, wherever it came from. */
export const sourceOf = ({ env, db }: Pick<Springline, "env" | "db">): BackupSource => ({
  ...{ dataDir: env.dataDir, databaseFile: db.file, givenSecret: env.secret },
  secretFile: join(env.dataDir, SECRET_ENTRY),
});

/** Managers are told once until they have looked. */
export function tellBackupFailed(app: Pick<Springline, "db" | "now">, why: string): void {
  const to = listMembers(app.db)
    .filter(({ id, roles }) => can({ kind: "person", id, roles }, "backups.manage"))
    .filter(({ id }) => !countUnseenNotices(app.db, id).some(({ kind }) => kind === "backup-failed"))
    .map(({ id }) => id);
  inTransaction(app.db, () => tell(app, { kind: "backup-failed", to, planId: null, data: { byId: null, why } }));
}
