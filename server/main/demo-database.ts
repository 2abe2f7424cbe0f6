/** Keeps the demo and real studios apart: neither mode ever opens the other's database. */
import { rmSync } from "node:fs";
import { type Db, openDatabase } from "#db/connection.ts";
import { readPurpose, studioExists, writePurpose } from "#db/repos/studio-repo.ts";
import { type Env, EnvError } from "#server/base/env.ts";

/**
 * Opens the database of this mode. Throws EnvError for a demo database outside the demo, and for a real one in it. A demo
 * that was interrupted while it was being filled is deleted and started again, and so is any demo with `fresh`.
 */
export function openDatabaseFor(env: Pick<Env, "mode" | "databaseFile">, fresh = false): Db {
  const db = openDatabase(env.databaseFile);
  const mark = readPurpose(db);
  if (env.mode !== "demo" && mark !== "real") {
    db.close();
    throw new EnvError(
      `${env.databaseFile} is the demo's database, whose passwords are public. Set SPRINGLINE_DATA to another folder.`,
    );
  }
  if (env.mode === "demo" && mark === "real" && studioExists(db)) {
    db.close();
    throw new EnvError(
      `${env.databaseFile} holds a real studio, which the demo does not touch. Set SPRINGLINE_DATA to another folder.`,
    );
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
