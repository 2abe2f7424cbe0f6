/** The invented studio in a database of its own, made by the real commands, for tests that look at all of a studio's data. */
import { randomUUID } from "node:crypto";
import { cpSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { openDatabase } from "#db/connection.ts";
import { wordIndexBeside } from "#db/words/word-index.ts";
import { seedStudio } from "#seed/run.ts";
import { createAuth } from "#server/auth/auth.ts";
import { readEnv } from "#server/base/env.ts";
import { createLog } from "#server/base/log.ts";
import { type Springline, setSpringline } from "#server/context/springline.ts";
import { createSyncHost } from "#server/main/sync-host.ts";
import { createFills } from "#server/month-fill/fills.ts";
import { createSigningKeys } from "#server/signing/keys.ts";
import { createDocumentRooms } from "#server/sync/document-rooms.ts";
import { idleCare } from "#tests/support/idle-care.ts";
import { testChecks } from "#tests/support/test-checks.ts";

export interface SeededDatabase {
  readonly app: Springline;
  /** Holds `data/`. */
  readonly folder: string;
  /** Stops the program and removes the folder. */
  remove(): Promise<void>;
}

/** `seeded: false` opens an empty database. */
export async function openSeeded({ seeded = true, at = Date.UTC(2026, 10, 9, 12) } = {}): Promise<SeededDatabase> {
  const folder = mkdtempSync(join(tmpdir(), "springline-studio-"));
  if (seeded) {
    mkdirSync(join(folder, "data"));
    for (const [name, bytes] of await seededOnce(at)) writeFileSync(join(folder, "data", name), bytes, { mode: 0o600 });
  }
  return seededIn(folder, openProgram(join(folder, "data"), at));
}

type Files = ReadonlyMap<string, Uint8Array>;
const seeds = new Map<number, Promise<Files>>();
/** The files of a data folder seeded at that moment, to be copied: seeding takes three seconds. */
function seededOnce(at: number): Promise<Files> {
  const made = seeds.get(at) ?? seededFiles(at);
  seeds.set(at, made);
  return made;
}

async function seededFiles(at: number): Promise<Files> {
  const folder = mkdtempSync(join(tmpdir(), "springline-seed-"));
  const app = openProgram(folder, at);
  await seedStudio(app);
  await stopProgram(app);
  const files = new Map(readdirSync(folder).map((name) => [name, readFileSync(join(folder, name))]));
  rmSync(folder, { recursive: true });
  return files;
}

function seededIn(folder: string, app: Springline): SeededDatabase {
  return {
    app,
    folder,
    async remove() {
      if (app.db.raw.open) await stopProgram(app);
      rmSync(folder, { recursive: true, force: true });
    },
  };
}

/** A copy of it as it is now, with a program of its own; the first is stopped, and only removed afterwards. */
export function copySeeded({ folder }: SeededDatabase): SeededDatabase {
  const copy = mkdtempSync(join(tmpdir(), "springline-copy-"));
  cpSync(join(folder, "data"), join(copy, "data"), { recursive: true });
  return seededIn(copy, openProgram(join(copy, "data")));
}

/** The program around the database in this data folder, without its sockets and pages. */
export function openProgram(dataDir: string, at = Date.UTC(2026, 10, 9, 12)): Springline {
  const env = readEnv("live", { SPRINGLINE_DATA: dataDir, SPRINGLINE_LOG: "silent" });
  const db = openDatabase(env.databaseFile);
  const [log, now, newId] = [createLog("silent"), () => at, () => randomUUID()];
  const keys = createSigningKeys({ db, secret: env.secret, now });
  const app: Springline = {
    ...{
      env,
      log,
      db,
      auth: createAuth(db, env, log),
      keys,
      fills: createFills(),
      care: idleCare,
      words: wordIndexBeside(db),
      now,
      newId,
    },
    get documents() {
      return rooms;
    },
    get checks() {
      return checks;
    },
  };
  const checks = testChecks(app);
  const rooms = createDocumentRooms({ db, log, now, newId, host: createSyncHost(app) });
  setSpringline(app);
  return app;
}

export async function stopProgram(app: Springline): Promise<void> {
  await app.documents.stop();
  setSpringline(undefined);
  app.db.close();
}
