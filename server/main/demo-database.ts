/** Keeps the invented studio and real ones apart: neither mode ever opens the other's database. */
import { rmSync } from "node:fs";
import { type Db, openDatabase } from "#db/connection.ts";
import { readPurpose, studioExists, writePurpose } from "#db/repos/studio-repo.ts";
import { type Env, EnvError } from "#server/base/env.ts";

/**
 * Opens the database of this mode. Throws EnvError for a demo's database outside the demo, and for a real one in it.
 * A demo that was cut off while it was being made is thrown away and begun again; so is any with `fresh`.
 */
export function openDatabaseFor(env: Pick<Env, "mode" | "databaseFile">, fresh = false): Db {
  const db = openDatabase(env.databaseFile);
  const mark = readPurpose(db);
  if (env.mode !== "demo" && mark !== "real") {
    db.close();
    throw new EnvError(
      `${env.databaseFile} is the demo's database: everybody knows its passwords. Use another folder (SPRINGLINE_DATA).`,
    );
  }
  if (env.mode === "demo" && mark === "real" && studioExists(db)) {
    db.close();
    throw new EnvError(`${env.databaseFile} holds a real studio: the demo does not touch it. Use another folder.`);
  }
  if (mark === "real" || (mark === "demo" && !fresh)) return db;
  db.close();
  for (const end of ["", "-wal", "-shm"]) rmSync(`${env.databaseFile}${end}`, { force: true });
  return openDatabase(env.databaseFile);
}

/** Fills an empty demo database, once. */
export async function fillDemo(db: Db, seed: () => Promise<void>): Promise<void> {
  if (studioExists(db)) return;
  writePurpose(db, "demo-unfinished");
  await seed();
  writePurpose(db, "demo");
}
