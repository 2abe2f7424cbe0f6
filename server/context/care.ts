/** What looks after the server while it runs, as pages and routes see it: `springline().care`. */

import type { LoggedTrouble } from "#server/base/troubles.ts";

export interface KeptBackup {
  readonly name: string;
  /** ms since the epoch, as are all times here. */
  readonly at: number;
  readonly bytes: number;
}

/** Something that did not work, in words that can be shown. */
interface Trouble {
  readonly at: number;
  readonly says: string;
  /** When it is tried again; null where it is not by itself. */
  readonly nextAt: number | null;
}

export interface BackupState {
  /** When the one that is being made was begun; null while none is. */
  readonly runningSince: number | null;
  /** The last that was made and restored for a test, with everything in it. */
  readonly last: (KeptBackup & { readonly folder: string; readonly tookMs: number }) | null;
  /** What has gone wrong since. */
  readonly problem: Trouble | null;
  /** When the next is due by the schedule; null while that is off. */
  readonly nextAt: number | null;
  /** The schedule's own files in the folder after the last run, the newest first. */
  readonly kept: readonly KeptBackup[];
}

export interface Backups {
  /** Begins a backup, unless one is being made. */
  begin(): void;
  state(): BackupState;
}

export interface DiskCopyState {
  /** The last copy; `at` is when it was begun. */
  readonly last: (KeptBackup & { readonly folder: string; readonly tookMs: number }) | null;
  /** Since when there is something that no copy has; null where the last has everything. */
  readonly changedAt: number | null;
  readonly problem: Trouble | null;
  /** From the beginning of one copy to the next, while something changes. */
  readonly paceMs: number;
}

export interface Copies {
  state(): DiskCopyState;
}

export interface StudioExports {
  running(): boolean;
  /** The whole studio as a zip file in a folder of its own, which whoever asked removes; or one sentence. */
  make(): Promise<{ readonly file: string } | { readonly problem: string }>;
}

export interface ClockJump {
  /** What the clock showed after it. */
  readonly at: number;
  /** Forward, or back where it is below zero. */
  readonly byMs: number;
}

export interface Care {
  readonly backups: Backups;
  /** The copy on another disk. */
  readonly copies: Copies;
  readonly exports: StudioExports;
  /** When the database was last checked for damage, ms since the epoch; null before the first time. */
  lastLook(): number | null;
  /** When the machine's clock was set while the server ran, the latest first. */
  clockJumps(): readonly ClockJump[];
  /** The last errors and warnings of the log, the latest first. */
  troubles(): readonly LoggedTrouble[];
}
