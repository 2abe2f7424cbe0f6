/** What pages are told once the database is known to be damaged: nothing more is saved until somebody restores it. */
import type { Db } from "#db/connection.ts";
import type { CloseName } from "#lib/protocol/close.ts";
import type { News } from "#lib/protocol/messages.ts";

export const DAMAGED: News = { t: "storage", failing: true, damaged: true };

/** For a page that joins: nothing while no damage is known. */
export const damageNews = (db: Db): readonly News[] => (db.damage.known === null ? [] : [DAMAGED]);

/** Why a page does not get into a room that holds unsaved words. */
export const notSaving = (db: Db): CloseName => (db.damage.known === null ? "storageFailing" : "storageDamaged");

/** What went into a file that is known to be damaged is never called saved: this then comes to no end. */
export async function syncedUnlessDamaged(db: Db, sync: () => Promise<void>): Promise<void> {
  await sync();
  if (db.damage.known !== null) await new Promise(() => undefined);
}
