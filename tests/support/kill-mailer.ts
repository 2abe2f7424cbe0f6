/**
 * Sends mails in its own process, to be killed. Arguments: database file, file with the certificate to trust, the server's
 * secret, when its clock begins (ms since the epoch). A minute of its clock passes in 50 ms.
 */
import { readFileSync } from "node:fs";
import { openDatabase } from "#db/connection.ts";
import { createLog } from "#server/base/log.ts";
import { mailRun } from "#server/mail/mail-runs.ts";

const [, , file = "", certificate = "", secret = "", start = "0"] = process.argv;
const db = openDatabase(file);
const begun = Date.now();
const now = () => Number(start) + (Date.now() - begun) * 1200;
const app = { db, now, newId: () => crypto.randomUUID(), log: createLog("silent"), env: { secret } } as never;
for (;;) {
  await mailRun(app, { ca: readFileSync(certificate, "utf8"), waitMs: 2000 });
  await new Promise((resolve) => setTimeout(resolve, 2));
}
