/** The check of a folder that files are written to: does it answer, may it be written, is it on another disk than the data? */
import { stat, statfs } from "node:fs/promises";
import { sizeWords } from "#lib/numbers/size-words.ts";
import { backupProblem } from "#server/backup/backup-problem.ts";
import { type BackupFolder, inTime, isOnDataDisk, readyFolder } from "#server/backup/folder.ts";
import { type Diagnosis, right, unsure, wrong } from "#server/doctor/finding.ts";

const SEE = "Change it under Studio, Backups.";

/** A network folder that is gone does not answer: it is not waited for. */
export async function folderFinding(what: string, folder: BackupFolder, dataDir: string): Promise<Diagnosis> {
  try {
    return await inTime(examined(what, folder, dataDir), folder.path);
  } catch (error) {
    return wrong(what, backupProblem(error, folder.path), SEE);
  }
}

async function examined(what: string, folder: BackupFolder, dataDir: string): Promise<Diagnosis> {
  const { path, make } = folder;
  if (make && !(await stat(path).catch(() => undefined))) return right(what, `${path} is made with the first backup.`);
  await readyFolder({ ...folder, make: false }, dataDir);
  const { bavail, bsize } = await statfs(path);
  const free = `${path} can be written; ${sizeWords(bavail * bsize)} are free there`;
  return (await isOnDataDisk(path, dataDir))
    ? unsure(what, `${free}. It is on the same disk as the data, and goes when that disk does. Another disk is better.`)
    : right(what, `${free}, on another disk than the data.`);
}
