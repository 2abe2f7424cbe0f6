/** When, where and how long backups are kept, as a manager sets it. Without a word from anybody they are on. */
import { isAbsolute, relative, resolve } from "node:path";
import * as z from "zod";
import { addToRecord } from "#db/repos/record-repo.ts";
import { readSetting, writeSetting } from "#db/repos/setting-repo.ts";
import { inTransaction } from "#db/transaction.ts";
import type { KeepRule } from "#lib/backups/keep-rule.ts";
import { ownBackupTime } from "#lib/backups/own-time.ts";
import { isClockTime } from "#lib/calendar/local-day.ts";
import { type Actor, can } from "#lib/policy/can.ts";
import type { Env, Mode } from "#server/base/env.ts";
import { fail, NO_RIGHT, ok, type Result } from "#server/base/result.ts";
import type { Springline } from "#server/context/springline.ts";
import { installationId } from "#server/http/installation-id.ts";
import { studioZone } from "#server/month-facts/month-settings.ts";
import { backupProblem } from "./backup-problem.ts";
import {
  type BackupFolder,
  inTime,
  isOnDataDisk,
  makeFolder,
  readyFolder,
  tryFolder,
  usualBackupFolder,
} from "./folder.ts";

type App = Pick<Springline, "db"> & { readonly env: Pick<Env, "dataDir" | "mode" | "secret"> };

interface BackupPlan {
  readonly on: boolean;
  /** "03:30" on the studio's wall clock. */
  readonly time: string;
  readonly keep: KeepRule;
}

interface StoredBackups extends Omit<BackupPlan, "time"> {
  /** Null for the studio's own. */
  readonly time: string | null;
  /** Null for the usual one. */
  readonly folder: string | null;
  /** Whether it was on another disk than the data. */
  readonly folderApart: boolean;
  /** Null where none is kept. */
  readonly copyFolder: string | null;
  readonly copyApart: boolean;
}

export interface BackupSettings extends BackupPlan {
  readonly folder: BackupFolder;
  /** Where a copy is kept that is at most a minute old; null where none is. */
  readonly copyFolder: BackupFolder | null;
  /** Whether the time is the studio's own, set by nobody. */
  readonly timeIsOwn: boolean;
}

/** For the manager's page. */
export interface BackupSettingsView extends BackupPlan {
  /** Empty for the studio's own. */
  readonly time: string;
  readonly ownTime: string;
  /** Empty for the usual one. */
  readonly folder: string;
  readonly usualFolder: string;
  /** Whether the folder is on another disk than the data. */
  readonly apart: boolean;
  /** Empty where no copy is kept. */
  readonly copyFolder: string;
  readonly copyApart: boolean;
  /** The studio's zone, in which the time is meant. */
  readonly zone: string;
  /** Names this version of the settings, so that another manager's change is not overwritten unseen. */
  readonly seen: number;
}

const USUAL: StoredBackups = {
  ...{ on: true, time: null, folder: null, folderApart: false, copyFolder: null, copyApart: false },
  keep: { days: 7, weeks: 4, months: 12 },
};

const count = (least: number, most: number, what: string) =>
  z
    .number(`Give the number of ${what}.`)
    .int(`Give the number of ${what} as a whole number.`)
    .min(least, `Keep at least ${least} of the ${what}.`)
    .max(most, `Keep at most ${most} of the ${what}.`);

const WHOLE_PATH = "Give the whole path of the folder, beginning with /.";
const folderPath = z
  .string()
  .trim()
  .max(1000, "A path has at most 1000 characters.")
  .refine((path) => path === "" || isAbsolute(path), WHOLE_PATH)
  // biome-ignore lint/suspicious/noControlCharactersInRegex: they are what is refused
  .refine((path) => !/[\u0000-\u001f]/.test(path), "A path is one line.")
  .transform((path) => (path === "" ? "" : resolve(path)));

export const backupSettingsSchema = z.strictObject({
  on: z.boolean(),
  /** Empty for the studio's own. */
  time: z
    .string()
    .refine((time) => time === "" || isClockTime(time), "Give the time as hours and minutes, such as 03:30."),
  folder: folderPath,
  copyFolder: folderPath,
  keep: z.strictObject({
    days: count(1, 60, "days"),
    weeks: count(0, 104, "weeks"),
    months: count(0, 120, "months"),
  }),
  /** The version that was shown; 0 where nothing was set. */
  seen: z.number().int(),
});

/** For who knows no more of the server than its database. */
export const areBackupsOn = (db: Springline["db"], mode: Mode): boolean => stored({ db, env: { mode } }).data.on;

const ownTime = ({ env }: App): string => ownBackupTime(installationId(env.secret));

type Stored = Pick<Springline, "db"> & { readonly env: Pick<Env, "mode"> };

function stored({ db, env }: Stored): { readonly data: StoredBackups; readonly seen: number } {
  const setting = readSetting(db, "backups");
  // Nobody needs a backup of the invented studio, but may try it.
  if (!setting) return { data: { ...USUAL, on: env.mode !== "demo" }, seen: 0 };
  return { data: setting.data as StoredBackups, seen: setting.updatedAt }; // written by saveBackupSettings only
}

export function readBackupSettings(app: App): BackupSettings {
  const { folder, folderApart, copyFolder, copyApart, time, ...plan } = stored(app).data;
  const path = folder ?? usualBackupFolder(app.env.dataDir);
  return {
    ...{ ...plan, time: time ?? ownTime(app), timeIsOwn: time === null },
    folder: { path, make: folder === null, apart: folderApart },
    copyFolder: copyFolder === null ? null : { path: copyFolder, make: false, apart: copyApart },
  };
}

/** Errors: 403 no-right. */
export function showBackupSettings(app: App, actor: Actor): Result<BackupSettingsView> {
  return can(actor, "backups.manage") ? ok(viewOf(app)) : NO_RIGHT;
}

function viewOf(app: App): BackupSettingsView {
  const { data, seen } = stored(app);
  const { folder, folderApart, time, ...plan } = data;
  const usualFolder = usualBackupFolder(app.env.dataDir);
  return {
    ...{ ...plan, time: time ?? "", ownTime: ownTime(app), folder: folder ?? "", usualFolder, apart: folderApart },
    ...{ copyFolder: plan.copyFolder ?? "", zone: studioZone(app), seen },
  };
}

type Wanted = z.infer<typeof backupSettingsSchema>;

/**
 * The folder is made and written into before anything is saved. Errors: 403 no-right, 409 changed-meanwhile, 422 folder with
 * what is wrong with it.
 */
export async function saveBackupSettings(
  app: App & Pick<Springline, "now">,
  actor: Actor,
  { seen, folder: path, copyFolder: copyPath, time, ...plan }: Wanted,
): Promise<Result<BackupSettingsView>> {
  if (actor?.kind !== "person" || !can(actor, "backups.manage")) return NO_RIGHT;
  const tried = await tryPath(app, path === "" ? usualBackupFolder(app.env.dataDir) : path);
  if (!tried.ok) return tried;
  const copies = copyPath === "" ? ok(false) : await tryPath(app, copyPath);
  if (!copies.ok) return copies;
  const data: StoredBackups = {
    ...{ ...plan, time: time === "" ? null : time, folder: path === "" ? null : path, folderApart: tried.value },
    ...{ copyFolder: copyPath === "" ? null : copyPath, copyApart: copies.value },
  };
  return inTransaction(app.db, (): Result<BackupSettingsView> => {
    if (stored(app).seen !== seen) return CHANGED_MEANWHILE;
    // Two changes within a millisecond are still two versions.
    writeSetting(app.db, "backups", { data, updatedAt: Math.max(app.now(), seen + 1) });
    addToRecord(app.db, { at: app.now(), actorId: actor.id, subject: "studio", kind: "backup-settings", body: data });
    return ok(viewOf(app));
  });
}

/** Whether the folder, which may be written, is on another disk than the data. */
async function tryPath({ env }: App, path: string): Promise<Result<boolean>> {
  const inside = relative(env.dataDir, path);
  if (!inside.startsWith("..") && !isAbsolute(inside)) return badFolder("Name a folder outside the data folder.");
  try {
    return ok(await inTime(writable(path, env.dataDir), path));
  } catch (error) {
    return badFolder(backupProblem(error, path));
  }
}

async function writable(path: string, dataDir: string): Promise<boolean> {
  await makeFolder(path);
  await readyFolder({ path, make: false, apart: false }, dataDir);
  await tryFolder(path);
  return !(await isOnDataDisk(path, dataDir));
}

const badFolder = (says: string) => fail(422, "folder", says);

const CHANGED_MEANWHILE = fail(
  409,
  "changed-meanwhile",
  "Somebody else has changed the backup settings meanwhile. Reload the page, then make your change again.",
);
