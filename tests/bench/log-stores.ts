/**
 * One update of a document appended to the log: the program's SQLite beside PostgreSQL, in the same run on the same disk. Each has
 * two figures: until the row may be passed on (a killed process loses nothing) and until it may be called saved (a power cut loses
 * nothing). Says in one line where there is no PostgreSQL; the program itself never uses one.
 */
import { closeSync, fdatasyncSync, mkdtempSync, openSync, rmSync, writeSync } from "node:fs";
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
const WARM = 50;
const ROWS = 500;
const WRITERS = 20;
/** Everything in turn, several times: what else the disk does then meets all alike. The middle one counts. */
const ROUNDS = 5;

interface Store {
  readonly what: string;
  /** Appends one row; resolves when it is as safe as `what` says. */
  readonly append: (n: number) => Promise<unknown> | unknown;
}
/** Stores, and what closes them. */
interface Opened {
  readonly stores: readonly Store[];
  close(): Promise<void> | void;
}

export async function benchLogStores(): Promise<boolean> {
  const folder = mkdtempSync(join(tmpdir(), "springline-log-"));
  const server = startPostgres(tmpdir(), await freePort());
  const opened: Opened[] = [];
  try {
    opened.push(disk(folder), sqlite(folder));
    if (server) opened.push(await postgresOver(server, "unix socket", server.socketDir));
    if (server) opened.push(await postgresOver(server, "loopback TCP", "127.0.0.1"));
    console.log(
      server?.version ?? "There is no PostgreSQL on this machine (Debian: postgresql-15): SQLite stands alone.",
    );
    console.log(
      `${ROWS} rows of ${BYTES} bytes one after another, then from ${WRITERS} writers at once; middle of ${ROUNDS} rounds.`,
    );
    console.log(
      "Saved: fdatasync has returned (PostgreSQL: wal_sync_method). Passed on: the system has it, the disk not yet.",
    );
    await measureAll(opened.flatMap(({ stores }) => stores));
    return true;
  } finally {
    for (const { close } of opened) await close();
    server?.stop();
    rmSync(folder, { recursive: true, force: true });
  }
}

/** What the disk itself takes, in a file that has its length and in one that grows. */
function disk(folder: string): Opened {
  const bytes = Buffer.alloc(4096, 7);
  const [fixed, growing] = ["fixed", "growing"].map((name) => openSync(join(folder, name), "w")) as [number, number];
  writeSync(fixed, Buffer.alloc(4096 * ROWS));
  fdatasyncSync(fixed);
  let end = 0;
  const put = (fd: number, at: number) => {
    writeSync(fd, bytes, 0, bytes.length, at);
    fdatasyncSync(fd);
  };
  return {
    stores: [
      { what: "The disk: 4 kB over old ones, fdatasync", append: (n) => put(fixed, (n % ROWS) * bytes.length) },
      {
        what: "The disk: 4 kB at the end, fdatasync",
        append: () => {
          put(growing, end);
          end += bytes.length;
        },
      },
    ],
    close() {
      closeSync(fixed);
      closeSync(growing);
    },
  };
}

function sqlite(folder: string): Opened {
  const db = openDatabase(join(folder, "springline.sqlite"));
  db.raw.prepare("insert into document (name, generation, created_at) values ('p', 'g', 0)").run();
  const add = db.raw.prepare("insert into doc_update (name, bytes, actor_id, at) values ('p', ?, 'a', ?)");
  const bytes = Buffer.alloc(BYTES, 7);
  const commit = (n: number) => appendTransaction(db, () => add.run(bytes, n));
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
  const inTurn = (n: number) => {
    batch.rows.push(n);
    batch.done ??= new Promise<void>((resolve) => setImmediate(resolve)).then(flush);
    return batch.done;
  };
  return {
    stores: [
      { what: "SQLite, passed on: commit without waiting", append: commit },
      { what: "SQLite, saved: one turn, one commit, fdatasync", append: inTurn },
      { what: "SQLite, saved: synchronous=FULL (fsync)", append: (n) => inTransaction(db, () => add.run(bytes, n)) },
    ],
    close: () => db.close(),
  };
}

async function postgresOver({ port, user }: PrivatePostgres, over: string, host: string): Promise<Opened> {
  const bytes = Buffer.alloc(BYTES, 7);
  const connect = (sync: string) => {
    const connection = { synchronous_commit: sync };
    return postgres({ host, port, user, database: "postgres", max: WRITERS, connection, onnotice: () => undefined });
  };
  const [off, on] = [connect("off"), connect("on")];
  await on`create table if not exists doc_update (seq bigserial primary key, name text not null, bytes bytea not null, actor_id text not null, at bigint not null)`;
  await on`create index if not exists doc_update_name on doc_update (name, seq)`;
  const add = (sql: typeof on, n: number) =>
    sql`insert into doc_update (name, bytes, actor_id, at) values ('p', ${bytes}, 'a', ${n})`;
  return {
    stores: [
      { what: `PostgreSQL, ${over}: a query that does nothing`, append: () => on`select 1` },
      { what: `PostgreSQL, ${over}, passed on: synchronous_commit=off`, append: (n) => add(off, n) },
      { what: `PostgreSQL, ${over}, saved: synchronous_commit=on`, append: (n) => add(on, n) },
    ],
    async close() {
      await Promise.all([off.end(), on.end()]);
    },
  };
}

async function measureAll(stores: readonly Store[]): Promise<void> {
  const rounds = stores.map((): number[][] => []);
  for (let round = 0; round < ROUNDS; round++)
    for (const [i, { append }] of stores.entries()) rounds[i]?.push(await figures(append));
  console.log(row(["", "p50 ms", "p99 ms", "20 at once p50", "p99", "rows/s"]));
  for (const [i, { what }] of stores.entries()) {
    const middle = (k: number) => quantile(Float64Array.from(rounds[i]?.map((one) => one[k] ?? 0) ?? []).sort(), 0.5);
    console.log(row([what, ...[0, 1, 2, 3].map((k) => middle(k).toFixed(2)), middle(4).toFixed(0)]));
  }
}

/** p50 and p99 alone, p50 and p99 of twenty at once, rows a second. */
async function figures(append: Store["append"]): Promise<number[]> {
  for (let n = 0; n < WARM; n++) await append(n);
  const alone = sorted(await timed(append, ROWS));
  const from = performance.now();
  const shared = await Promise.all(Array.from({ length: WRITERS }, () => timed(append, ROWS / WRITERS)));
  const perSecond = ROWS / ((performance.now() - from) / 1000);
  const together = sorted(shared.flat());
  return [quantile(alone, 0.5), quantile(alone, 0.99), quantile(together, 0.5), quantile(together, 0.99), perSecond];
}

const sorted = (all: readonly number[]): Float64Array => Float64Array.from(all).sort();

async function timed(append: Store["append"], rows: number): Promise<number[]> {
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
