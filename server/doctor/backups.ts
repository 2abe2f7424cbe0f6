/** The check of the backups: were they made, did they pass their test, how many are kept. For the doctor and the health page. */
import { existsSync } from "node:fs";
import { openDatabase } from "#db/connection.ts";
import { sizeWords } from "#lib/numbers/size-words.ts";
import { plural } from "#lib/plan/format.ts";
import { areBackupsOn } from "#server/backup/backup-settings.ts";
import { keptBackupState } from "#server/backup/backup-state.ts";
import type { DataLocation, Mode } from "#server/base/env.ts";
import type { BackupState } from "#server/context/care.ts";
import { type Diagnosis, right, unsure, wrong } from "./finding.ts";
import { utcMinute } from "./times.ts";

const WHAT = "backups";
const DAY_MS = 86_400_000;
/** One may be late by a retry or two. Our own choice. */
const OLD_MS = 2 * DAY_MS;

interface BackupFacts {
  readonly on: boolean;
  readonly state: Pick<BackupState, "last" | "problem" | "kept">;
  /** Null where it is not known or not planned. */
  readonly nextAt: number | null;
  /** The time of day in words; null where it is not known. */
  readonly daily: string | null;
  readonly now: number;
  /** A moment in words. */
  readonly when: (at: number) => string;
}

/** The running server is asked by nobody: what it noted is read from the database. */
export function backupFinding({ databaseFile }: Pick<DataLocation, "databaseFile">, mode: Mode): Diagnosis {
  if (!existsSync(databaseFile)) return unsure(WHAT, "not checked: there is no database yet.");
  try {
    const db = openDatabase(databaseFile, { readOnly: true });
    try {
      const on = areBackupsOn(db, mode);
      if (!on && mode === "demo") return right(WHAT, "they are off, as nobody needs one of the invented studio.");
      return backupWords({
        on,
        state: keptBackupState(db),
        nextAt: null,
        daily: null,
        now: Date.now(),
        when: utcMinute,
      });
    } finally {
      db.close();
    }
  } catch (error) {
    return unsure(WHAT, `not checked: ${error instanceof Error ? error.message : String(error)}`);
  }
}

const SEE = "See Studio, Backups.";

export function backupWords({ on, state: { last, problem, kept }, nextAt, daily, now, when }: BackupFacts): Diagnosis {
  const made = last && `the last was made ${when(last.at)}, passed its test and has ${sizeWords(last.bytes)}`;
  if (problem)
    return wrong(
      WHAT,
      `${when(problem.at)}: ${problem.says}${made ? ` Before that, ${made}.` : " None has been made yet."}`,
      problem.nextAt === null ? SEE : `It is tried again ${when(problem.nextAt)}. ${SEE}`,
    );
  const next = nextAt === null ? "" : `; the next is due ${when(nextAt)}${daily === null ? "" : `, ${daily}`}`;
  if (!on)
    return unsure(WHAT, `none is made by itself${made ? `; ${made}` : ""}. Turn daily ones on under Studio, Backups.`);
  if (!last || !made) return right(WHAT, `none has been made yet${next}.`);
  const found = `${made}${next}; ${plural(kept.length, "backup")} kept.`;
  return now - last.at > OLD_MS
    ? wrong(WHAT, found, "That is more than two days ago. Press Back up now under Studio, Backups.")
    : right(WHAT, found);
}
