/** The composition root: the only place that knows every part of the server. */
import { randomUUID } from "node:crypto";
import type { Db } from "#db/connection.ts";
import { type Checkpoints, checkpointBeside } from "#db/file/checkpoints.ts";
import { beginRecord } from "#db/repos/record-source-repo.ts";
import { studioExists } from "#db/repos/studio-repo.ts";
import { wordIndexBeside } from "#db/words/word-index.ts";
import { createAuth } from "#server/auth/auth.ts";
import { newPairingCode } from "#server/auth/pairing-code.ts";
import { type BackupRuns, createBackupRuns } from "#server/backup/backup-runs.ts";
import { type CopyRuns, createCopyRuns } from "#server/backup/copy-runs.ts";
import type { Env } from "#server/base/env.ts";
import type { Log } from "#server/base/log.ts";
import type { Troubles } from "#server/base/troubles.ts";
import { createChecks } from "#server/check/checks.ts";
import { createThreads, programMark } from "#server/check/threads.ts";
import { type Springline, setSpringline } from "#server/context/springline.ts";
import { foldInThread } from "#server/doc-log/fold-in-thread.ts";
import { type ClockWatch, watchClock } from "#server/health/clock-watch.ts";
import { type DamageWatch, watchForDamage } from "#server/health/damage-watch.ts";
import { createFills } from "#server/month-fill/fills.ts";
import { needsSetUpCode } from "#server/people/set-up-code.ts";
import { announceCheck } from "#server/sign-off/after-check.ts";
import { createSigningKeys } from "#server/signing/keys.ts";
import { createExportRuns } from "#server/studio-files/export-runs.ts";
import { createDocumentRooms, type DocumentRooms } from "#server/sync/document-rooms.ts";
import type { SyncMeter } from "#server/sync/meter.ts";
import { createSyncHost } from "./sync-host.ts";

export interface Composed {
  readonly app: Springline;
  readonly rooms: DocumentRooms;
  readonly soundness: DamageWatch;
  readonly checkpoints: Checkpoints;
  readonly clock: ClockWatch;
  readonly backups: BackupRuns;
  readonly copies: CopyRuns;
}

export interface ComposeSetup {
  readonly env: Env;
  readonly log: Log;
  /** Where the log's errors and warnings are noted. */
  readonly troubles: Troubles;
  readonly meter?: SyncMeter | undefined;
}

/** Puts the running program together around an open database, and makes it the one that `springline()` gives. Long because: each part is named once. */
export function compose({ env, log, meter, troubles }: ComposeSetup, db: Db): Composed {
  const [now, newId] = [() => Date.now(), () => randomUUID()];
  const keys = createSigningKeys({ db, secret: env.secret, now });
  keys.check();
  beginRecord(db, now());
  const watches = { soundness: watchForDamage({ db, log }), clock: watchClock({ now }) };
  const setUpCode = needsSetUpCode(env) && !studioExists(db) ? newPairingCode() : undefined;
  const half = { env, log, db, auth: createAuth(db, env, log), keys, setUpCode, fills: createFills(), now, newId };
  // Documents, checks and their hooks need each other: the getters allow them to be created one after the other.
  const app: Springline = {
    ...half,
    words: wordIndexBeside(db),
    get documents() {
      return rooms;
    },
    get checks() {
      return checks;
    },
    care: {
      get backups() {
        return backups;
      },
      get copies() {
        return copies;
      },
      get exports() {
        return exports;
      },
      ...noticed(watches, troubles),
    },
  };
  const [backups, copies, exports] = [createBackupRuns({ app }), createCopyRuns({ app }), createExportRuns({ app })];
  const runner = createThreads({ databaseFile: env.databaseFile, log });
  const checks = createChecks({
    ...{ app, runner, programMark: programMark(newId()) },
    heard: (answer) => announceCheck(app, answer),
  });
  const rooms = createDocumentRooms({
    ...{ db, log, now, newId, fold: foldInThread(env.databaseFile) },
    host: createSyncHost(app),
    ...(meter ? { meter } : {}),
  });
  setSpringline(app);
  return { app, rooms, ...watches, backups, copies, checkpoints: checkpointBeside(db, { log }) };
}

/** What the health page asks of the watches and the log. */
const noticed = ({ soundness, clock }: Pick<Composed, "soundness" | "clock">, troubles: Troubles) => ({
  lastLook: () => soundness.lastLook(),
  clockJumps: () => clock.jumps(),
  troubles: () => troubles.list(),
});
