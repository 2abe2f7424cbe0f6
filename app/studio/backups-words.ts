/** What the studio's page says of backups. Pure. */
import { plural } from "#lib/plan/format.ts";
import type { BackupSettingsView } from "#server/backup/backup-settings.ts";

export const BACKUPS = {
  intro:
    "One file with the whole studio, once a day while people go on working. Each is restored for a test before it counts. It contains the server’s secret: whoever has it has the studio.",
  off: "Backups are off: if this disk fails, the studio is lost.",
  sameDisk:
    "The folder is on the same disk as the studio’s data, and goes when that disk does. Name a folder on another disk, or carry the files to another machine.",
  none: "None has been made yet.",
  folderHint: "Another disk than the data’s is best. The server’s account must be able to write into it.",
  copyHint:
    "Of another disk or a network folder that is mounted. Every half minute in which something changes, a copy of the database is put there. Empty: none.",
  noCopy:
    "No copy is kept between two backups: a lost disk takes up to a day’s work. Name a copy folder on another disk.",
  keepHint: "What the schedule has not made itself is never deleted.",
} as const;

/** "Every day at 03:30 (Europe/Lisbon), into /mnt/backups." */
export const planWords = ({ time, ownTime, zone, folder, usualFolder }: BackupSettingsView): string =>
  `Every day at ${time || ownTime} (${zone}), into ${folder === "" ? usualFolder : folder}.`;

export const timeHint = ({ ownTime, zone }: Pick<BackupSettingsView, "ownTime" | "zone">): string =>
  `In the studio’s zone, ${zone}. Empty: ${ownTime}, a time of this studio’s own, so that studios of one machine do not all begin at once.`;

export const copyWords = (folder: string): string =>
  `A copy that is at most a minute old is kept in ${folder}; a lost disk takes no more than that.`;

/** "The last of each of 7 days, 4 weeks and 12 months is kept." */
export function keepWords({ keep: { days, weeks, months } }: Pick<BackupSettingsView, "keep">): string {
  const parts = [
    plural(days, "day"),
    ...(weeks > 0 ? [plural(weeks, "week")] : []),
    ...(months > 0 ? [plural(months, "month")] : []),
  ];
  const last = parts.pop() ?? "";
  return `The last of each of ${parts.length > 0 ? `${parts.join(", ")} and ` : ""}${last} is kept.`;
}
