/**
 * An update of the program over a database that an earlier commit of this project wrote, and the way back: every row is still
 * there, what was signed verifies, passwords still open, people write on; the copy from before holds the very rows, and is put back.
 */
import { execFileSync } from "node:child_process";
import { scryptSync } from "node:crypto";
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { brotliDecompressSync } from "node:zlib";
import Database from "better-sqlite3";
import { afterEach, beforeEach, describe, expect, test } from "vitest";
import { type Db, openDatabase } from "#db/connection.ts";
import { listPlanRows } from "#db/repos/plan-repo.ts";
import { planParts } from "#lib/doc/layout.ts";
import { readEnv } from "#server/base/env.ts";
import { createLog } from "#server/base/log.ts";
import { ok } from "#server/base/result.ts";
import { createTroubles } from "#server/base/troubles.ts";
import { planDoc } from "#server/context/live-documents.ts";
import { readSoundEdition } from "#server/editions/sound-edition.ts";
import { compose } from "#server/main/compose.ts";
import { withPlan } from "#server/plans/plan-doc.ts";
import { proveRecord } from "#server/record/prove-record.ts";

const ROOT = join(import.meta.dirname, "../..");
type Rows = ReadonlyMap<string, readonly Readonly<Record<string, unknown>>[]>;

let folder: string;
let file: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "springline-upgrade-"));
  file = join(folder, "data", "springline.sqlite");
  mkdirSync(join(folder, "data"));
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

/** Puts a database of an earlier commit into the data folder. */
function put(fixture: string): Rows {
  const packed = readFileSync(join(ROOT, "tests/fixtures/databases", `${fixture}.sqlite.br`));
  writeFileSync(file, brotliDecompressSync(packed), { mode: 0o600 });
  return rowsOf(file);
}

function rowsOf(name: string): Rows {
  const raw = new Database(name, { readonly: true });
  const tables = raw.prepare("select name from sqlite_master where type = 'table' and name not like 'sqlite_%'");
  const all = (table: string) => raw.prepare(`select * from "${table}"`).all() as Record<string, unknown>[];
  const rows: Rows = new Map((tables.pluck().all() as string[]).map((table) => [table, all(table)]));
  raw.close();
  return rows;
}

/** The rows of `table` with the columns of an earlier version, in an order of their own. */
function asBefore(now: Rows, before: Rows, table: string): string[] {
  const columns = Object.keys(before.get(table)?.[0] ?? {});
  return (now.get(table) ?? []).map((row) => JSON.stringify(columns.map((column) => row[column]))).toSorted();
}

/** Whether the account's stored hash is this password's: scrypt (RFC 7914) as the sign-in library asks for it. */
function opensWith({ raw }: Db, email: string, password: string): boolean {
  const of = raw.prepare("select a.password from account a join user u on u.id = a.user_id where u.email = ?");
  const [salt = "", key] = String(of.pluck().get(email)).split(":");
  const cost = { N: 16_384, r: 16, p: 1, maxmem: 64 * 1024 * 1024 };
  return scryptSync(password.normalize("NFKC"), salt, 64, cost).toString("hex") === key;
}

/** The program of today over that database, without its pages. */
async function running<T>(act: (parts: ReturnType<typeof compose>) => Promise<T>): Promise<T> {
  const env = readEnv("demo", { SPRINGLINE_DATA: join(folder, "data"), SPRINGLINE_LOG: "silent" });
  const db = openDatabase(file);
  const parts = compose({ env, log: createLog("silent"), troubles: createTroubles() }, db);
  try {
    return await act(parts);
  } finally {
    await parts.app.documents.stop(2000);
    await parts.app.checks.stop();
    await Promise.all([parts.backups.stop(), parts.copies.stop()]);
    await parts.checkpoints.stop();
    parts.soundness.stop();
    parts.clock.stop();
    db.close();
  }
}

describe.each([
  ["eight-migrations", "marta@tidewater.example"],
  ["fifteen-migrations", "marta@tholepin.example"],
])("a database with %s", (fixture, email) => {
  test("keeps every row, gains tables, and was copied before", () => {
    const before = put(fixture);
    openDatabase(file).close();
    const now = rowsOf(file);
    const kept = [...before.keys()].filter((table) => table !== "__drizzle_migrations");
    expect(kept.length).toBeGreaterThan(20);
    for (const table of kept) expect(asBefore(now, before, table), table).toEqual(asBefore(before, before, table));
    expect(now.get("__drizzle_migrations")?.length).toBeGreaterThan(before.get("__drizzle_migrations")?.length ?? 0);
    const [copy = "", ...more] = readdirSync(join(folder, "data")).filter((name) => name.includes(".before-"));
    expect(more).toEqual([]);
    expect(rowsOf(join(folder, "data", copy))).toEqual(before);
    openDatabase(file).close();
    expect(readdirSync(join(folder, "data")).filter((name) => name.includes(".before-"))).toEqual([copy]);
  });

  test("serves: passwords still open, documents do and are written on, editions verify, the record is proved", async () => {
    put(fixture);
    await running(async ({ app }) => {
      expect(opensWith(app.db, email, "low-tide-demo-12")).toBe(true);
      for (const row of listPlanRows(app.db)) {
        const items = withPlan(app, row, ({ plan }) => ok(plan.items.length));
        expect(items.ok && items.value).toBeGreaterThan(5);
        app.documents.transact(planDoc(row.id), row.ownerId, (doc) => planParts(doc).notes.insert(0, "Later. "));
        expect(withPlan(app, row, ({ plan }) => ok(plan.notes?.slice(0, 7)))).toEqual(ok("Later. "));
      }
      const signed = listPlanRows(app.db).filter(({ state }) => state === "signed-off");
      expect(signed.length).toBeGreaterThan(0);
      for (const { id } of signed) expect(readSoundEdition(app, id, 1)).toMatchObject({ number: 1 });
      expect(proveRecord(app.db)).toMatchObject({ holds: true });
    });
  });

  test("goes back by the copy from before, row for row", () => {
    const before = put(fixture);
    openDatabase(file).close();
    const copy = readdirSync(join(folder, "data")).find((name) => name.includes(".before-")) ?? "";
    const said = execFileSync(process.execPath, ["server/cli/command.mjs", "restore", join(folder, "data", copy)], {
      cwd: ROOT,
      env: { ...process.env, SPRINGLINE_DATA: join(folder, "data"), SPRINGLINE_SECRET: undefined },
      encoding: "utf8",
    });
    expect(said).toContain("estored");
    expect(rowsOf(file)).toEqual(before);
    expect(readdirSync(join(folder, "data")).some((name) => name.startsWith("before-restore-"))).toBe(true);
  });
});
