/** Looks at the whole database again and again while the server runs, so that damage is known before it spreads to every backup. */
import { rmSync, statSync } from "node:fs";
import type { Db } from "#db/connection.ts";
import { lookMark, quickCheck } from "#db/file/soundness.ts";
import type { Log } from "#server/base/log.ts";

export interface DamageWatchSetup {
  readonly db: Pick<Db, "file" | "damage">;
  readonly log: Pick<Log, "error" | "warn">;
  readonly pace?: Partial<LookIntervals>;
}

/** Our own choice: a file is read whole at each look, which for a small one takes a fraction of a second. */
export interface LookIntervals {
  /** Between two glances at the names of the files, ms. */
  readonly glanceMs: number;
  /** Between two looks at a small file, ms. */
  readonly smallMs: number;
  /** Between two looks at any other, ms. */
  readonly largeMs: number;
  /** From how many bytes a file is not small. */
  readonly largeBytes: number;
}
const PACE: LookIntervals = {
  glanceMs: 5_000,
  smallMs: 60_000,
  largeMs: 6 * 60 * 60_000,
  largeBytes: 64 * 1024 * 1024,
};

export interface DamageWatch {
  /** Looks now; resolves when it has looked. Never rejects. */
  look(): Promise<void>;
  /** One glance: has another file been put in the place, did a command ask for a look, is one due? Never rejects. */
  glance(): Promise<void>;
  stop(): void;
}

const REPLACED = "another file was put in its place, or it was taken away, while the server ran";

/**
 * The first look is at the start, when the database is opened; the next ones follow its size, and come at once after any
 * error that SQLite calls damage and when a command found some (`lookMark`). What is found stays known in `db.damage`.
 */
export function watchForDamage(setup: DamageWatchSetup): DamageWatch {
  const { db, log } = setup;
  const pace = { ...PACE, ...setup.pace };
  const names = [db.file, `${db.file}-wal`].map(nameOf);
  let looking: Promise<void> | undefined;
  let since = performance.now();
  rmSync(lookMark(db.file), { force: true });
  const look = () => {
    looking ??= lookOnce(setup).finally(() => {
      looking = undefined;
      since = performance.now();
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
  return { look, glance, stop: () => clearInterval(timer) };
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
  log.warn({ err }, "the database could not be looked through; trying again later");

function tell({ db, log }: DamageWatchSetup, damage: string): void {
  db.damage.found(damage);
  log.error(
    { damage },
    "the database is damaged: nothing more is written; stop the server and restore the latest backup",
  );
}

/** What a name stands for on the disk: an open file that loses its name is written to, and gone at the end. */
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

/** Whether a command at the keyboard asked for a look; asked for once. */
function wasAsked(file: string): boolean {
  const mark = lookMark(file);
  if (!statSync(mark, { throwIfNoEntry: false })) return false;
  rmSync(mark, { force: true });
  return true;
}
