/**
 * Makes one backup while its disk fills up. Argument: the job as JSON; its folder is the disk. Prints the problem, and the names
 * of what is left on the disk.
 */
import { appendFileSync, readdirSync } from "node:fs";
import { join } from "node:path";
import { type BackupJob, runBackupJob } from "#server/backup/backup-job.ts";

const job = JSON.parse(process.argv[2] ?? "") as BackupJob;
const disk = job.folder.path;
const MB = Buffer.alloc(1024 * 1024);

function fill(): void {
  try {
    for (;;) appendFileSync(join(disk, "filler"), MB);
  } catch {
    // It is full.
  }
}
const watching = setInterval(() => {
  if (readdirSync(disk).length === 0) return;
  clearInterval(watching);
  fill();
}, 0);
const { problem } = await runBackupJob(job);
clearInterval(watching);
process.stdout.write(JSON.stringify({ problem, left: readdirSync(disk) }));
