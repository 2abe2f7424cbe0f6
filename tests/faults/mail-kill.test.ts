/**
 * kill -9 while mails are sent, again and again: before the mail server answers, and after. No mail is lost, none waits for
 * ever, and one comes twice only where the process died with it on its way, under the same Message-ID.
 */
import { type ChildProcess, spawn } from "node:child_process";
import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { afterAll, beforeAll, expect, test } from "vitest";
import { openDatabase } from "#db/connection.ts";
import { insertMail } from "#db/repos/mail-repo.ts";
import { listNoticeRows } from "#db/repos/notice-repo.ts";
import { bundleServer, ROOT } from "#tests/support/bundle-server.ts";
import { eventually } from "#tests/support/eventually.ts";
import { often } from "#tests/support/long.ts";
import { openMailStudio } from "#tests/support/mail-studio.ts";

const BUNDLES = join(ROOT, "dist-tests/mail-kill");
const KILLS = often(4, 50);
const MAILS = 3 * KILLS;
const DAY_MS = 86_400_000;

beforeAll(() => bundleServer({ "kill-mailer": "tests/support/kill-mailer.ts" }, BUNDLES));
const children: ChildProcess[] = [];
afterAll(() => {
  for (const child of children) child.kill("SIGKILL");
});

test(`[INV-30] ${KILLS} kills over ${MAILS} mails`, async () => {
  const m = await openMailStudio();
  m.choose("jonas", { comment: "digest" });
  for (let i = 0; i < MAILS; i++) m.tell("jonas");
  const { app, db } = m.s;
  const at = app.now();
  for (const { id } of listNoticeRows(db, "jonas", Number.MAX_SAFE_INTEGER, MAILS)) {
    insertMail(db, { id: `mail-${id}`, userId: "jonas", notices: [id], madeAt: at, nextAt: at });
  }
  const { file } = db;
  const secret = app.env.secret;
  const certificate = `${file}.pem`;
  writeFileSync(certificate, m.server.ca);
  db.close();
  const start = (n: number) => {
    const args = [join(BUNDLES, "kill-mailer.js"), file, certificate, secret, String(at + n * DAY_MS)];
    const child = spawn(process.execPath, args, { cwd: ROOT, stdio: ["ignore", "inherit", "inherit"] });
    children.push(child);
    return { child, ended: new Promise((resolve) => child.once("exit", resolve)) };
  };
  for (let n = 0; n < KILLS; n++) {
    const { child, ended } = start(n);
    let kept = 0;
    // Every second one between the server's keeping the mail and its answer; the others a moment after it.
    m.server.onKept = () => {
      kept++;
      if (kept !== 2) return;
      if (n % 2 === 0) child.kill("SIGKILL");
      else setTimeout(() => child.kill("SIGKILL"), n % 4);
    };
    await ended;
  }
  m.server.onKept = () => undefined;
  const last = start(KILLS);
  const ids = () => m.server.arrived.map(({ mail }) => mail.messageId);
  const reader = openDatabase(file, { readOnly: true });
  const unsent = reader.raw.prepare("select count(*) from mail where sent_at is null").pluck();
  await eventually("every mail is written down as sent", () => unsent.get() === 0, 60_000);
  reader.close();
  last.child.kill("SIGKILL");
  await last.ended;
  expect(new Set(ids()).size).toBe(MAILS);
  expect(ids().length - MAILS).toBeLessThanOrEqual(KILLS);
  // The kills did hit mails on their way: otherwise this would show nothing.
  expect(ids().length).toBeGreaterThan(MAILS);
  await m.stop();
});
