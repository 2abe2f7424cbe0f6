/**
 * This program's sync server with all that it does in production, in its own process: sessions of the sign-in
 * library, the policy, the database, the rules after every burst. Only pages are left out.
 * Arguments: data folder, number of people, number of plans, file of their first update. Tells its parent the port and one cookie per writer.
 */

import { createHmac, randomUUID } from "node:crypto";
import { readFileSync } from "node:fs";
import { createServer } from "node:http";
import * as Y from "yjs";
import { openDatabase } from "#db/connection.ts";
import { checkpointBeside } from "#db/file/checkpoints.ts";
import { insertAccount } from "#db/repos/people-repo.ts";
import { insertPlan } from "#db/repos/plan-repo.ts";
import { insertRoom } from "#db/repos/room-repo.ts";
import { wordIndexBeside } from "#db/words/word-index.ts";
import { createAuth } from "#server/auth/auth.ts";
import { readEnv } from "#server/base/env.ts";
import { createLog } from "#server/base/log.ts";
import { createChecks } from "#server/check/checks.ts";
import { createThreads } from "#server/check/threads.ts";
import type { Springline } from "#server/context/springline.ts";
import { foldInThread } from "#server/doc-log/fold-in-thread.ts";
import { createSyncHost } from "#server/main/sync-host.ts";
import { createFills } from "#server/month-fill/fills.ts";
import { firstRun } from "#server/people/first-run.ts";
import { announceCheck } from "#server/sign-off/after-check.ts";
import { createSigningKeys } from "#server/signing/keys.ts";
import { attachSync } from "#server/sync/attach.ts";
import { createDocumentRooms } from "#server/sync/document-rooms.ts";
import { idleCare } from "#tests/support/idle-care.ts";
import { answerParent } from "./child.ts";
import { monthFileBeside, monthKey } from "./months.ts";
import { livePlan, planKey } from "./plans.ts";

const [, , folder = "", people = "2", plans = "1", base = ""] = process.argv;
const env = readEnv("live", { SPRINGLINE_DATA: folder, SPRINGLINE_LOG: "error" });
const db = openDatabase(env.databaseFile);
const log = createLog(env.logLevel);
checkpointBeside(db, { log });
const now = () => Date.now();
const newId = () => randomUUID();
const auth = createAuth(db, env, log);
const keys = createSigningKeys({ db, secret: env.secret, now });
const app: Springline = {
  ...{ env, log, db, auth, keys, fills: createFills(), care: idleCare, words: wordIndexBeside(db), now, newId },
  get documents() {
    return rooms;
  },
  get checks() {
    return checks;
  },
};
const checks = createChecks({
  ...{ app, runner: createThreads({ databaseFile: env.databaseFile, log }), programMark: newId() },
  heard: (answer) => announceCheck(app, answer),
});
const rooms = createDocumentRooms({
  db,
  log,
  now,
  newId,
  host: createSyncHost(app),
  fold: foldInThread(env.databaseFile),
});

const cookies = await letPeopleIn(Number(people));
const plan = livePlan();
insertRoom(db, { id: "loft", name: "Loft", equipment: plan.equipment });
const doc = new Y.Doc();
Y.applyUpdate(doc, readFileSync(base));
// One more than asked for, since the first plan opened pays the one-time costs.
for (let n = 0; n <= Number(plans); n++) hold(planKey(n));
const month = new Y.Doc();
Y.applyUpdate(month, readFileSync(monthFileBeside(base)));
rooms.create({ kind: "month", key: monthKey(now()) }, month, "w0");

const http = createServer();
attachSync({ rooms, server: http });
answerParent(http, { cookies });

function hold(id: string): void {
  const { title, lengthSeconds } = plan;
  insertPlan(db, { id, title, lengthSeconds, ownerId: "w0", roomId: "loft", team: true, at: now() });
  rooms.create({ kind: "plan", key: id }, doc, "w0");
}

/** A studio with that many coaches, each with a session as from signing in. */
async function letPeopleIn(count: number): Promise<string[]> {
  await firstRun(app, {
    studio: "Slipway Strength",
    town: "Port Ellery",
    name: "Petra Vale",
    email: "petra@quay.example",
    password: "a long enough password",
    teaches: false,
    starter: false,
  });
  const context = await auth.$context;
  const made: string[] = [];
  for (let i = 0; i < count; i++) {
    const id = `w${i}`;
    insertAccount(db, {
      id,
      name: `Coach ${i}`,
      email: `${id}@quay.example`,
      passwordHash: "-",
      roles: ["coach"],
      at: 0,
    });
    const { token } = await context.internalAdapter.createSession(id);
    const seal = createHmac("sha256", env.secret).update(token).digest("base64");
    made.push(`${context.authCookies.sessionToken.name}=${encodeURIComponent(`${token}.${seal}`)}`);
  }
  return made;
}
