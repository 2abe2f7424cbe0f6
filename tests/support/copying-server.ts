/**
 * A process that writes and keeps copies, to be killed. Arguments: data folder, copy folder, ms from one copy to the next. Each
 * commit adds one numbered document; prints the number and the time of every commit, one a line.
 */
import { join } from "node:path";
import { openDatabase } from "#db/connection.ts";
import { writeSetting } from "#db/repos/setting-repo.ts";
import { insertStudio } from "#db/repos/studio-repo.ts";
import { createCopyRuns } from "#server/backup/copy-runs.ts";
import { type Env, readEnv } from "#server/base/env.ts";
import { createLog } from "#server/base/log.ts";

const [, , dataDir = "", copyFolder = "", pace = "1000"] = process.argv;
const env: Env = readEnv("live", { SPRINGLINE_DATA: dataDir, SPRINGLINE_LOG: "warn" });
const db = openDatabase(join(dataDir, "springline.sqlite"));
insertStudio(db, { name: "Tholepin Strength", town: "Port Ellery", soleAuthorMaySign: false, at: Date.now() });
const keep = { days: 1, weeks: 0, months: 0 };
const data = { on: false, time: "03:30", keep, folder: null, folderApart: false, copyFolder, copyApart: false };
writeSetting(db, "backups", { data, updatedAt: 1 });
const app = { db, env, now: () => Date.now(), log: createLog("error", { to: 2 }) };
createCopyRuns({ app, paceMs: Number(pace), lookMs: 50 }).start();

const add = db.raw.prepare("insert into document (name, generation, created_at) values (?, 'g', 0)");
let n = 0;
setInterval(() => {
  add.run(`plan/${n}`);
  process.stdout.write(`${n++} ${Date.now()}\n`);
}, 5);
