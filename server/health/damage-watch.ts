/** Checks the whole database repeatedly while the server runs, so that damage is found before it reaches every backup. */
import { rmSync, statSync } from "node:fs";
import type { Db } from "#db/connection.ts";
import { lookMark, quickCheck } from "#db/file/soundness.ts";
import type { Log } from "#server/base/log.ts";

export interface DamageWatchSetup {
  readonly db: Pick<Db, "file" | "damage">;
  readonly log: Pick<Log, "error" | "warn">;
  readonly pace?: Partial<LookIntervals>;
}

/** Our own choices. Each look reads the whole file, which takes a fraction of a second for a small one. */
export interface LookIntervals {
  /** Between two glances at the file names, ms. */
  readonly glanceMs: number;
  /** Between two looks at a small file, ms. */
  readonly smallMs: number;
  /** Between two looks at any other, ms. */
  readonly largeMs: number;
  /** A file of at least this many bytes is large. */
  readonly largeBytes: number;
}
const PACE: LookIntervals = {
  glanceMs: 5_000,
  smallMs: 60_000,
  largeMs: 6 * 60 * 60_000,
  largeBytes: 64 * 1024 * 1024,
};

export interface DamageWatch {
  /** When the file was last checked, ms since the epoch: by this watch, or as it was opened. */
  lastLook(): number;
  /** Checks the file now; resolves when that is done. Never rejects. */
  look(): Promise<void>;
  /** Has the file been replaced, did a command ask for a check, or is one due? Never rejects. */
  glance(): Promise<void>;
  stop(): void;
}

const REPLACED = "the file was replaced or removed while the server was running";

/**
 * The first check happens when the database is opened. Further ones follow at intervals that depend on its size, and at once
 * after any error that SQLite calls damage or when a command has found some (`lookMark`). `db.damage` keeps the result.
 */
export function watchForDamage(setup: DamageWatchSetup): DamageWatch {
  const { db, log } = setup;
  const pace = { ...PACE, ...setup.pace };
  const names = [db.file, `${db.file}-wal`].map(nameOf);
  let looking: Promise<void> | undefined;
  let since = performance.now();
  let lookedAt = Date.now();
  rmSync(lookMark(db.file), { force: true });
  const look = () => {
    looking ??= lookOnce(setup).finally(() => {
      looking = undefined;
      since = performance.now();
      lookedAt = Date.now();
    });
    return looking;
  };
  const glance = async () => {
    if (db.damage.known !== null) return;
    if (names.some((name) => name.isOther())) return tell(setup, REPLACED);
    const every = sizeOf(db.file) < pace.largeBytes ? pace.smallMs : pace.largeMs;
    if (wasAsked(db.file) || performance.now() - since >= every) await look();
  };
  db.damage.onSuspicion(() => void look());
  const timer = setInterval(() => void glance().catch((err: unknown) => cannot(log, err)), pace.glanceMs);
  timer.unref();
  return { lastLook: () => lookedAt, look, glance, stop: () => clearInterval(timer) };
}

async function lookOnce(setup: DamageWatchSetup): Promise<void> {
  if (setup.db.damage.known !== null) return;
  try {
    const damage = await quickCheck(setup.db.file);
    if (damage !== undefined) tell(setup, damage);
  } catch (err) {
    cannot(setup.log, err);
  }
}

const cannot = (log: DamageWatchSetup["log"], err: unknown): void =>
  log.warn({ err }, "the database could not be checked for damage; trying again later");

function tell({ db, log }: DamageWatchSetup, damage: string): void {
  db.damage.found(damage);
  log.error(
    { damage },
    "the database is damaged and nothing more is written; stop the server and restore the latest backup",
  );
}

/** The file behind a name. An open file that has lost its name can still be written to, and is gone once it is closed. */
function nameOf(file: string): { isOther(): boolean } {
  let first = inodeOf(file);
  return {
    isOther() {
      const now = inodeOf(file);
      first ??= now;
      return now !== first;
    },
  };
}

function inodeOf(file: string): string | undefined {
  const found = statSync(file, { throwIfNoEntry: false });
  return found && `${found.dev} ${found.ino}`;
}

const sizeOf = (file: string): number => statSync(file, { throwIfNoEntry: false })?.size ?? 0;

/** Whether a command has asked for a check; clears the request. */
function wasAsked(file: string): boolean {
  const mark = lookMark(file);
  if (!statSync(mark, { throwIfNoEntry: false })) return false;
  rmSync(mark, { force: true });
  return true;
}
