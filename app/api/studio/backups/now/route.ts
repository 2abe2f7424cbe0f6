import { backUpNow } from "#server/backup/manage-backups.ts";
import { guarded, needs } from "#server/http/respond.ts";

export const POST = guarded({ first: needs("backups.manage") }, ({ app, actor }) => backUpNow(app, actor));
