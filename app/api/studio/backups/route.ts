import { backupSettingsSchema, saveBackupSettings } from "#server/backup/backup-settings.ts";
import { readBackupState } from "#server/backup/manage-backups.ts";
import { guarded, needs } from "#server/http/respond.ts";

export const GET = guarded({ first: needs("backups.manage") }, ({ app, actor }) => readBackupState(app, actor));
export const PUT = guarded({ body: backupSettingsSchema, first: needs("backups.manage") }, ({ app, actor, body }) =>
  saveBackupSettings(app, actor, body),
);
