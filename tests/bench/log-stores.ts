/**
 * One update of a document appended to the log: the program's SQLite beside PostgreSQL, in the same run on the same disk. Each has
 * two figures: until the row may be passed on (a killed process loses nothing) and until it may be called saved (a power cut loses
 * nothing). Says in one line where there is no PostgreSQL; the program itself never uses one.
 */
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { performance } from "node:perf_hooks";
import postgres from "postgres";
import { openDatabase } from "#db/connection.ts";
import { syncLog } from "#db/file/log-sync.ts";
import { appendTransaction, inTransaction } from "#db/transaction.ts";
import { freePort } from "#tests/support/app.ts";
import { type PrivatePostgres, startPostgres } from "./private-postgres.ts";
import { quantile } from "./timing.ts";

/** As large as what a key press makes. */
const BYTES = 60;
const WARM = 200;
const ROWS = 2000;
const WRITERS = 20;

/** Appends one row; resolves when it is as safe as the line says. */
type Append = (n: number) => Promise<unknown> | unknown;

export async function benchLogStores(): Promise<boolean> {
  const folder = mkdtempSync(join(tmpdir(), "springline-log-"));
  console.log(`${ROWS} rows of ${BYTES} bytes, one after another; then ${WRITERS} writers at once.`);
  console.log(
    "Both wait with fdatasync (PostgreSQL: wal_sync_method); what is passed on has been given to the system only.",
  );
  console.log(row(["", "p50 ms", "p99 ms", "20 at once p50", "p99", "rows/s"]));
  try {
    await measureSqlite(folder);
    const server = startPostgres(tmpdir(), await freePort());
    if (server === undefined) {
      console.log("There is no PostgreSQL on this machine (Debian: postgresql-15), so SQLite stands alone.");
      return true;
    }
    try {
      await measurePostgres(server);
    } finally {
      server.stop();
    }
    return true;
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

async function measureSqlite(folder: string): Promise<void> {
  const db = openDatabase(join(folder, "springline.sqlite"));
  db.raw.prepare("insert into document (name, generation, created_at) values ('p', 'g', 0)").run();
  const add = db.raw.prepare("insert into doc_update (name, bytes, actor_id, at) values ('p', ?, 'a', ?)");
  const bytes = Buffer.alloc(BYTES, 7);
  const commit = (n: number) => appendTransaction(db, () => add.run(bytes, n));
  await measure("SQLite, passed on: commit without fsync", commit);
  await measure("SQLite, saved: the same, then fdatasync", async (n) => {
    commit(n);
    await syncLog(db);
  });
  // What twenty people type in one turn is one transaction, and one fdatasync answers all of it.
  const batch = { rows: [] as number[], done: undefined as Promise<void> | undefined };
  const flush = async () => {
    const rows = batch.rows.splice(0);
    batch.done = undefined;
    appendTransaction(db, () => {
      for (const n of rows) add.run(bytes, n);
    });
    await syncLog(db);
  };
  await measure("SQLite, saved, one turn one commit", (n) => {
    batch.rows.push(n);
    batch.done ??= new Promise<void>((resolve) => setImmediate(resolve)).then(flush);
    return batch.done;
  });
  await measure("SQLite, synchronous=FULL", (n) => inTransaction(db, () => add.run(bytes, n)));
  db.close();
}

async function measurePostgres({ socketDir, port, user, version }: PrivatePostgres): Promise<void> {
  console.log(version);
  const bytes = Buffer.alloc(BYTES, 7);
  const kinds = [
    ["passed on", "off"],
    ["saved", "on"],
  ] as const;
  for (const [over, host] of [
    ["unix socket", socketDir],
    ["loopback TCP", "127.0.0.1"],
  ] as const)
    for (const [safe, sync] of kinds) {
      const connection = { synchronous_commit: sync };
      const sql = postgres({
        host,
        port,
        user,
        database: "postgres",
        max: WRITERS,
        connection,
        onnotice: () => undefined,
      });
      await sql`create table if not exists doc_update (seq bigserial primary key, name text not null, bytes bytea not null, actor_id text not null, at bigint not null)`;
      await sql`create index if not exists doc_update_name on doc_update (name, seq)`;
      if (sync === "off") await measure(`PostgreSQL, ${over}: a query that does nothing`, () => sql`select 1`);
      await measure(
        `PostgreSQL, ${over}, ${safe}: synchronous_commit=${sync}`,
        (n) => sql`insert into doc_update (name, bytes, actor_id, at) values ('p', ${bytes}, 'a', ${n})`,
      );
      await sql.end();
    }
}

async function measure(what: string, append: Append): Promise<void> {
  for (let n = 0; n < WARM; n++) await append(n);
  const alone = await timed(append, ROWS);
  const from = performance.now();
  const shared = await Promise.all(Array.from({ length: WRITERS }, () => timed(append, ROWS / WRITERS)));
  const perSecond = ROWS / ((performance.now() - from) / 1000);
  const [a, b] = [sorted(alone), sorted(shared.flat())];
  const ms = (all: Float64Array, q: number) => quantile(all, q).toFixed(3);
  console.log(row([what, ms(a, 0.5), ms(a, 0.99), ms(b, 0.5), ms(b, 0.99), perSecond.toFixed(0)]));
}

const sorted = (all: readonly number[]): Float64Array => Float64Array.from(all).sort();

async function timed(append: Append, rows: number): Promise<number[]> {
  const took: number[] = [];
  for (let n = 0; n < rows; n++) {
    const from = performance.now();
    await append(n);
    took.push(performance.now() - from);
  }
  return took;
}

const row = (cells: readonly string[]): string =>
  cells.map((cell, i) => (i === 0 ? cell.padEnd(62) : cell.padStart(14))).join("");
