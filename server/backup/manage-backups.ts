/** The manager's acts: what became of the backups, and one at once. */
import { type Actor, can } from "#lib/policy/can.ts";
import { fail, NO_RIGHT, ok, type Result } from "#server/base/result.ts";
import type { BackupState } from "#server/context/care.ts";
import type { Springline } from "#server/context/springline.ts";

/** Errors: 403 no-right. */
export function readBackupState({ care }: Pick<Springline, "care">, actor: Actor): Result<BackupState> {
  return can(actor, "backups.manage") ? ok(care.backups.state()) : NO_RIGHT;
}

/** Begins one unless one is being made, and answers at once. Errors: 403 no-right, 503 damaged. */
export function backUpNow({ care, db }: Pick<Springline, "care" | "db">, actor: Actor): Result<BackupState> {
  if (!can(actor, "backups.manage")) return NO_RIGHT;
  if (db.damage.known !== null)
    return fail(503, "damaged", "The database is damaged. Stop the server and restore the latest backup.");
  care.backups.begin();
  return ok(care.backups.state());
}
