/** The doctor's checks of the machine: the database, free disk space, file permissions, the clock. */
import { lookup } from "node:dns/promises";
import { existsSync, readdirSync, statfsSync, statSync } from "node:fs";
import { networkInterfaces } from "node:os";
import { dirname, join } from "node:path";
import { damageInFile } from "#db/file/soundness.ts";
import { sizeWords } from "#lib/numbers/size-words.ts";
import { usualBackupFolder } from "#server/backup/folder.ts";
import type { BackupSource } from "#server/backup/make-backup.ts";
import type { DataLocation } from "#server/base/env.ts";
import type { AddressReply } from "./ask.ts";
import { type Diagnosis, right, unsure, wrong } from "./finding.ts";

const MB = 1024 * 1024;
/** Space for SQLite's log and a backup. Our own choice. */
const LEAST_FREE = 200 * MB;
/** Sessions and invitations end by the clock; half a minute makes no difference to them. Our own choice. */
const CLOCK_OFF_MS = 30_000;

export function databaseFinding({ databaseFile }: Pick<DataLocation, "databaseFile">): Diagnosis {
  const what = "database";
  if (!existsSync(databaseFile))
    return unsure(what, `there is none yet at ${databaseFile}; the first start creates it.`);
  try {
    const damage = damageInFile(databaseFile);
    if (damage === undefined) return right(what, `undamaged (quick_check), ${sizeWords(statSync(databaseFile).size)}.`);
    const said = damage.replace(/\s+/g, " ");
    return wrong(
      what,
      `damaged: ${said}.`,
      "Stop the server and restore the latest backup: npm run -s restore -- FILE",
    );
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error);
    return wrong(what, `cannot be read (${why}).`, "Run this under the server's account.");
  }
}

export function diskFinding({ dataDir, databaseFile }: Pick<DataLocation, "dataDir" | "databaseFile">): Diagnosis {
  const what = "disk";
  const here = existingParent(dataDir);
  const { bavail, bsize } = statfsSync(here);
  const free = bavail * bsize;
  const size = existsSync(databaseFile) ? statSync(databaseFile).size : 0;
  const needed = Math.max(LEAST_FREE, 2 * size);
  const found = `${sizeWords(free)} free on the data folder's disk`;
  return free >= needed
    ? right(what, `${found}.`)
    : wrong(what, `${found}; an update or a backup needs ${sizeWords(needed)}.`, "Free some space on that disk.");
}

export function rightsFinding({ dataDir, databaseFile, secretFile, givenSecret }: BackupSource): Diagnosis {
  const what = "secrets";
  if (process.platform === "win32") return unsure(what, "file permissions cannot be checked on this system.");
  const files = [secretFile, databaseFile, `${databaseFile}-wal`, `${databaseFile}-shm`, ...backupsIn(dataDir)];
  const there = files.filter((file) => existsSync(file));
  if (there.length === 0) return unsure(what, `there is nothing yet in ${dataDir}.`);
  const open = there.filter((file) => (statSync(file).mode & 0o077) !== 0);
  if (open.length > 0)
    return wrong(
      what,
      `other accounts can read ${open.length === 1 ? "a file" : `${open.length} files`} with the studio's secrets.`,
      `Run chmod 600 ${open.map(quoted).join(" ")}`,
    );
  const held = givenSecret === undefined ? "" : " SPRINGLINE_SECRET is used instead of the file.";
  return right(what, `only their owner can read the database, the secret and the backups.${held}`);
}

/** The only other clock at hand is the one in the answers of the public address. */
export async function clockFinding(origin: string, asked: AddressReply): Promise<Diagnosis> {
  const what = "clock";
  const now = new Date().toISOString().replace(/\.\d+Z/, "Z");
  if (asked.kind !== "answer" || asked.date === null || Number.isNaN(Date.parse(asked.date)))
    return unsure(
      what,
      `it is ${now} here; it can only be compared with the public address while the server is running.`,
    );
  if (await isThisMachine(new URL(origin).hostname))
    return unsure(
      what,
      `it is ${now} here; the public address is this machine, so there is no other clock to compare it with.`,
    );
  const off = asked.askedAt - Date.parse(asked.date);
  // The Date header has whole seconds.
  if (Math.abs(off - 500) <= CLOCK_OFF_MS)
    return right(what, "agrees with the public address (which may be this machine's own time, passed on by a proxy).");
  const seconds = Math.round(Math.abs(off) / 1000);
  return wrong(
    what,
    `${seconds} s ${off > 0 ? "ahead of" : "behind"} the clock of the public address.`,
    "Set the machine's time over the network (NTP).",
  );
}

async function isThisMachine(hostname: string): Promise<boolean> {
  try {
    const { address } = await lookup(hostname.replace(/^\[|\]$/g, ""));
    const own = Object.values(networkInterfaces()).flatMap((all) => all ?? []);
    return own.some((one) => one.address === address) || address.startsWith("127.");
  } catch {
    // The name cannot be looked up: the check of the address reports that.
    return false;
  }
}

function backupsIn(dataDir: string): string[] {
  const beside = (dir: string, wanted: RegExp) =>
    existsSync(dir)
      ? readdirSync(dir)
          .filter((name) => wanted.test(name))
          .map((name) => join(dir, name))
      : [];
  return [...beside(dataDir, /\.before-/), ...beside(usualBackupFolder(dataDir), /\.tar$/)].filter((file) =>
    statSync(file).isFile(),
  );
}

const existingParent = (dir: string): string => (existsSync(dir) ? dir : existingParent(dirname(dir)));
const quoted = (file: string): string => (/[^\w./-]/.test(file) ? `'${file.replaceAll("'", "'\\''")}'` : file);
