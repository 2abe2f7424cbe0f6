/** The doctor's checks of the machine: the database, the room on the disk, who may read the secrets, the clock. */
import { lookup } from "node:dns/promises";
import { existsSync, readdirSync, statfsSync, statSync } from "node:fs";
import { networkInterfaces } from "node:os";
import { dirname, join } from "node:path";
import { damageInFile } from "#db/file/soundness.ts";
import type { DataLocation } from "#server/base/env.ts";
import type { AddressReply } from "./ask.ts";
import { type Diagnosis, right, unsure, wrong } from "./finding.ts";

const MB = 1024 * 1024;
/** Room for SQLite's log and a backup beside it. Our own choice. */
const LEAST_FREE = 200 * MB;
/** Sessions and invitations end by the clock; half a minute matters to none of them. Our own choice. */
const CLOCK_OFF_MS = 30_000;

export function databaseFinding({ databaseFile }: Pick<DataLocation, "databaseFile">): Diagnosis {
  const what = "database";
  if (!existsSync(databaseFile)) return unsure(what, `there is none yet at ${databaseFile}; the first start makes it.`);
  try {
    const damage = damageInFile(databaseFile);
    if (damage === undefined) return right(what, `whole (quick_check), ${megabytes(statSync(databaseFile).size)}.`);
    const said = damage.replace(/\s+/g, " ");
    return wrong(what, `damaged: ${said}.`, "Stop the server and npm run -s restore -- FILE the latest backup.");
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error);
    return wrong(what, `cannot be read (${why}).`, "Run this as the account of the server.");
  }
}

export function diskFinding({ dataDir, databaseFile }: Pick<DataLocation, "dataDir" | "databaseFile">): Diagnosis {
  const what = "disk";
  const here = existingParent(dataDir);
  const { bavail, bsize } = statfsSync(here);
  const free = bavail * bsize;
  const size = existsSync(databaseFile) ? statSync(databaseFile).size : 0;
  const needed = Math.max(LEAST_FREE, 2 * size);
  const found = `${megabytes(free)} free where the data are`;
  return free >= needed
    ? right(what, `${found}.`)
    : wrong(what, `${found}; an update or a backup needs ${megabytes(needed)}.`, "Make room on that disk.");
}

export function rightsFinding({ dataDir, databaseFile, secretFile, givenSecret }: DataLocation): Diagnosis {
  const what = "secrets";
  if (process.platform === "win32") return unsure(what, "who may read the files cannot be told on this system.");
  const files = [secretFile, databaseFile, `${databaseFile}-wal`, `${databaseFile}-shm`, ...backupsIn(dataDir)];
  const there = files.filter((file) => existsSync(file));
  if (there.length === 0) return unsure(what, `there is nothing yet in ${dataDir}.`);
  const open = there.filter((file) => (statSync(file).mode & 0o077) !== 0);
  if (open.length > 0)
    return wrong(
      what,
      `${open.length === 1 ? "a file" : `${open.length} files`} with the studio's secrets can be read by other accounts.`,
      `Run chmod 600 ${open.map(quoted).join(" ")}`,
    );
  const held = givenSecret === undefined ? "" : " SPRINGLINE_SECRET counts before the file.";
  return right(what, `database, secret and backups are their owner's alone.${held}`);
}

/** The only clock at hand that may be another machine's is the one that the public address answers with. */
export async function clockFinding(origin: string, asked: AddressReply): Promise<Diagnosis> {
  const what = "clock";
  const now = new Date().toISOString().replace(/\.\d+Z/, "Z");
  if (asked.kind !== "answer" || asked.date === null || Number.isNaN(Date.parse(asked.date)))
    return unsure(what, `it is ${now} here; nothing else to compare it with: needs the server running.`);
  if (await isThisMachine(new URL(origin).hostname))
    return unsure(what, `it is ${now} here; the public address is this machine, so there is no other clock to ask.`);
  const off = asked.askedAt - Date.parse(asked.date);
  // The Date header knows whole seconds.
  if (Math.abs(off - 500) <= CLOCK_OFF_MS)
    return right(what, "agrees with the public address, unless its proxy passes our own time on.");
  const seconds = Math.round(Math.abs(off) / 1000);
  return wrong(
    what,
    `${seconds} s ${off > 0 ? "ahead of" : "behind"} the public address's.`,
    "Let the machine keep its time by the network (NTP).",
  );
}

async function isThisMachine(hostname: string): Promise<boolean> {
  try {
    const { address } = await lookup(hostname.replace(/^\[|\]$/g, ""));
    const own = Object.values(networkInterfaces()).flatMap((all) => all ?? []);
    return own.some((one) => one.address === address) || address.startsWith("127.");
  } catch {
    // No name, no clock either: the check of the address says so.
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
  return [...beside(dataDir, /\.before-/), ...beside(join(dirname(dataDir), "backups"), /\.tar$/)].filter((file) =>
    statSync(file).isFile(),
  );
}

const existingParent = (dir: string): string => (existsSync(dir) ? dir : existingParent(dirname(dir)));
const megabytes = (bytes: number): string =>
  bytes >= 1024 * MB ? `${(bytes / 1024 / MB).toFixed(1)} GB` : `${(bytes / MB).toFixed(1)} MB`;
const quoted = (file: string): string => (/[^\w./-]/.test(file) ? `'${file.replaceAll("'", "'\\''")}'` : file);
