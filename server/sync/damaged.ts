/** What pages are told once the database is known to be damaged: nothing is saved until a backup is restored. */
import type { Db } from "#db/connection.ts";
import type { CloseName } from "#lib/protocol/close.ts";
import type { News } from "#lib/protocol/messages.ts";

export const DAMAGED: News = { t: "storage", failing: true, damaged: true };

/** For a page that joins; empty while no damage is known. */
export const damageNews = (db: Db): readonly News[] => (db.damage.known === null ? [] : [DAMAGED]);

/** Why a page cannot join a room with unsaved changes. */
export const notSaving = (db: Db): CloseName => (db.damage.known === null ? "storageFailing" : "storageDamaged");

/** Never resolves once damage is known: what went into a damaged file is not called saved. */
export async function syncedUnlessDamaged(db: Db, sync: () => Promise<void>): Promise<void> {
  await sync();
  if (db.damage.known !== null) await new Promise(() => undefined);
}
