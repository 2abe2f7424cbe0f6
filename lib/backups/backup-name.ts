/**
 * The names of what the server makes by itself. Each says when it was made (UTC, to the second) and, in eight digits, by which
 * installation, so that two studios may share a folder and files of other names are never taken for these.
 */

const STAMP = /^(\d{4}-\d{2}-\d{2})T(\d{2})(\d{2})(\d{2})Z$/;
const MARK_LENGTH = 8;

/** The installation's public id, shortened for names. */
export const nameMark = (installation: string): string => installation.slice(0, MARK_LENGTH);

/** "2026-11-30T033000Z". */
export const nameStamp = (at: number): string => `${new Date(at).toISOString().slice(0, 19).replaceAll(":", "")}Z`;

/** ms since the epoch; undefined for anything that `nameStamp` does not write. */
function stampTime(stamp: string): number | undefined {
  const [, day, hours, minutes, seconds] = STAMP.exec(stamp) ?? [];
  const at = Date.parse(`${day}T${hours}:${minutes}:${seconds}Z`);
  return Number.isNaN(at) || nameStamp(at) !== stamp ? undefined : at;
}

/** "springline-2026-11-30T033000Z-v0.1.0.tar": of one that was asked for by command, with the program's version. */
export const commandedName = (at: number, program: string): string => `springline-${nameStamp(at)}-v${program}.tar`;

/** When it was made, by its name; undefined for every other name. */
export function commandedAt(name: string): number | undefined {
  const [, stamp = ""] = /^springline-([^v]+)-v.+\.tar$/.exec(name) ?? [];
  return stampTime(stamp);
}

/** "springline-2026-11-30T033000Z-s1a2b3c4d.tar". */
export const scheduledName = (at: number, mark: string): string => `springline-${nameStamp(at)}-s${mark}.tar`;

/** When a scheduled backup of this installation was made, by its name; undefined for every other name. */
export const scheduledAt = (name: string, mark: string): number | undefined =>
  timeBetween(name, "springline-", `-s${mark}.tar`);

/** "springline-copy-1a2b3c4d-2026-11-30T033000Z.sqlite". */
export const diskCopyName = (at: number, mark: string): string => `springline-copy-${mark}-${nameStamp(at)}.sqlite`;

/** When a copy of this installation was begun, by its name; undefined for every other name. */
export const copyAt = (name: string, mark: string): number | undefined =>
  timeBetween(name, `springline-copy-${mark}-`, ".sqlite");

/** The file beside copies that holds the secret: "springline-copy-1a2b3c4d.secret". */
export const copySecretName = (mark: string): string => `springline-copy-${mark}.secret`;

/** The name of the secret that belongs to a copy; undefined for a file that is none. */
export function secretNameOf(copy: string): string | undefined {
  const mark = /^springline-copy-([0-9a-f]{8})-/.exec(copy)?.[1];
  return mark !== undefined && copyAt(copy, mark) !== undefined ? copySecretName(mark) : undefined;
}

function timeBetween(name: string, before: string, after: string): number | undefined {
  if (!name.startsWith(before) || !name.endsWith(after)) return undefined;
  return stampTime(name.slice(before.length, name.length - after.length));
}
