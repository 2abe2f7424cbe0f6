/** How the server is, for its manager: one line a subject, each with what was found and, where something is wrong, what to do. */

import { freemem, totalmem } from "node:os";
import { join } from "node:path";
import { deviceZone } from "#lib/calendar/zone.ts";
import { dayOfMoment, timeOfMoment, timeWords } from "#lib/formats/dates.ts";
import type { Formats } from "#lib/formats/formats.ts";
import { sizeWords } from "#lib/numbers/size-words.ts";
import { plural, secondsWords } from "#lib/plan/format.ts";
import { type Actor, can } from "#lib/policy/can.ts";
import { type BackupSettings, readBackupSettings } from "#server/backup/backup-settings.ts";
import { databaseBytes } from "#server/backup/folder.ts";
import { NO_RIGHT, ok, type Result } from "#server/base/result.ts";
import type { Springline } from "#server/context/springline.ts";
import { backupWords } from "#server/doctor/backups.ts";
import { type Diagnosis, right, unsure, wrong } from "#server/doctor/finding.ts";
import { diskFinding, rightsFinding } from "#server/doctor/machine.ts";
import { mailWords } from "#server/doctor/mail.ts";
import { studioFormats } from "#server/formats/formats.ts";
import { studioZone } from "#server/month-facts/month-settings.ts";
import program from "../../package.json" with { type: "json" };
import { folderFinding } from "./folder-finding.ts";
import { type TroubleLine, troubleLines } from "./trouble-words.ts";

export type HealthApp = Pick<Springline, "db" | "env" | "now" | "documents" | "care">;

export interface HealthReport {
  /** ms since the epoch. */
  readonly at: number;
  readonly lines: readonly Diagnosis[];
  /** The last errors and warnings, the latest first. */
  readonly troubles: readonly TroubleLine[];
}

/** So long an answer serves everybody: pages ask again and again. */
const KEPT_MS = 3_000;
const kept = new WeakMap<object, { readonly at: number; readonly report: Promise<HealthReport> }>();

/** Errors: 403 no-right. */
export async function readHealthReport(app: HealthApp, actor: Actor): Promise<Result<HealthReport>> {
  if (!can(actor, "health.read")) return NO_RIGHT;
  const last = kept.get(app.db);
  if (last && Math.abs(app.now() - last.at) < KEPT_MS) return ok(await last.report);
  const report = examineRunning(app);
  kept.set(app.db, { at: app.now(), report });
  return ok(await report);
}

/** What is wrong, in the words of its lines' names: "backups, disk". Null where nothing is, and for who may not know. */
export async function wrongNow(app: HealthApp, actor: Actor): Promise<string | null> {
  const report = await readHealthReport(app, actor);
  if (!report.ok) return null;
  const names = report.value.lines.filter(({ is }) => is === "wrong").map(({ what }) => what);
  return names.length > 0 ? names.join(", ") : null;
}

async function examineRunning(app: HealthApp): Promise<HealthReport> {
  const { env, db, care } = app;
  const zone = studioZone(app);
  const formats = studioFormats(app);
  const when = (at: number): string => `${dayOfMoment(at, formats)}, ${timeOfMoment(at, formats)}`;
  const secretFile = join(env.dataDir, "secret");
  const place = { dataDir: env.dataDir, databaseFile: db.file, secretFile, givenSecret: undefined };
  const settings = readBackupSettings(app);
  const state = care.backups.state();
  const lines = [
    databaseLine(app, when),
    savingLine(app),
    backupWords({
      on: settings.on,
      state,
      nextAt: state.nextAt,
      daily: dailyWords(settings, formats),
      now: app.now(),
      when,
    }),
    ...(settings.on ? [await folderFinding("backup folder", settings.folder, env.dataDir)] : []),
    ...(settings.copyFolder
      ? copyLines(app, when, await folderFinding("copy folder", settings.copyFolder, env.dataDir))
      : []),
    safely("disk", () => diskFinding(place)),
    safely("secrets", () => rightsFinding(place)),
    mailWords(db, when),
    clockLine(app, when, zone),
    connectionsLine(app),
    memoryLine(),
    programLine(app, when),
  ];
  return { at: app.now(), lines, troubles: troubleLines(care.troubles()) };
}

/** Studios of one machine are spread over an hour until somebody sets a time. */
const dailyWords = ({ time, timeIsOwn }: BackupSettings, formats: Formats): string =>
  `as every day at ${timeWords(time, formats)}${timeIsOwn ? ", this studio’s own time until one is set under Studio, Backups" : ""}`;

/** A disk that cannot be examined is no reason to show nothing. */
function safely(what: string, find: () => Diagnosis): Diagnosis {
  try {
    return find();
  } catch (error) {
    const why = error instanceof Error && "code" in error ? String(error.code) : "no reason given";
    return wrong(what, `it cannot be examined (${why}).`, "Check the disk of the data folder.");
  }
}

/** What the page promises of a copy, ms. */
const COPY_OLD_MS = 60_000;

function copyLines({ care, now }: HealthApp, when: When, folder: Diagnosis): Diagnosis[] {
  const { last, changedAt, problem, paceMs } = care.copies.state();
  const made = last
    ? `the last copy is as of ${when(last.at)} and took ${(last.tookMs / 1000).toFixed(1)} s`
    : "none yet";
  const lost = changedAt === null ? 0 : Math.max(0, now() - changedAt);
  const missing =
    changedAt === null
      ? "nothing has changed since"
      : `what was written in the last ${secondsWords(Math.ceil(lost / 1000))} is not in it yet`;
  const found = `${made}; ${missing}.`;
  if (problem)
    return [folder, wrong("copy", `${when(problem.at)}: ${problem.says} ${subject(found)}`, "See Studio, Backups.")];
  if (paceMs > COPY_OLD_MS - 5_000)
    return [
      folder,
      unsure(
        "copy",
        `${found} The database is so large that one is made every ${secondsWords(Math.round(paceMs / 1000))}, so that copying takes at most a twentieth of the time. A faster disk makes it more often.`,
      ),
    ];
  return lost > 2 * COPY_OLD_MS
    ? [folder, wrong("copy", found, "Check the copy folder's disk; see Studio, Backups.")]
    : [folder, right("copy", found)];
}

const subject = (words: string): string => `${words.charAt(0).toUpperCase()}${words.slice(1)}`;

const RESTORE = "Stop the server and restore the latest backup: npm run -s restore -- FILE";

type When = (at: number) => string;

function databaseLine({ db, care }: HealthApp, when: When): Diagnosis {
  const size = sizeWords(databaseBytes(db.file));
  if (db.damage.known !== null)
    return wrong("database", "it is damaged, and nothing more is written into it.", RESTORE);
  const looked = care.lastLook();
  return looked === null
    ? unsure("database", `${size}; its pages have not been checked yet.`)
    : right("database", `${size}; every page was checked ${when(looked)} and is undamaged.`);
}

function savingLine({ documents }: HealthApp): Diagnosis {
  const { failing } = documents.health();
  return failing.length === 0
    ? right("saving", "everything that was written is saved.")
    : wrong(
        "saving",
        `changes of ${plural(failing.length, "document")} could not be saved yet; the server keeps trying.`,
        "Free some space on the data folder's disk, and leave the server running until they are saved.",
      );
}

const DAY_MS = 86_400_000;

function clockLine({ now, care }: HealthApp, when: When, zone: string): Diagnosis {
  const here = deviceZone();
  const found = `it is ${when(now())} in the studio (${zone})${here === zone ? "" : `; the server's own zone is ${here}`}`;
  const [jump] = care.clockJumps();
  if (!jump || Math.abs(now() - jump.at) > DAY_MS) return right("clock", `${found}.`);
  const seconds = Math.round(Math.abs(jump.byMs) / 1000);
  const by = seconds < 120 ? `${seconds} s` : `${Math.round(seconds / 60)} min`;
  return wrong(
    "clock",
    `${found}; it jumped ${by} ${jump.byMs > 0 ? "forward" : "back"} ${when(jump.at)}.`,
    "Set the machine's time over the network (NTP), and keep the machine from sleeping.",
  );
}

function connectionsLine({ documents }: HealthApp): Diagnosis {
  const { rooms, connections } = documents.health();
  return right(
    "connections",
    `${plural(connections, "socket")} open to ${plural(rooms, "plan or month", "plans or months")}.`,
  );
}

/** Less, and the system begins to write memory to the disk. Our own choice. */
const LEAST_FREE = 0.03;

function memoryLine(): Diagnosis {
  const [free, all] = [freemem(), totalmem()];
  const found = `the server uses ${sizeWords(process.memoryUsage.rss())}; ${sizeWords(free)} of the machine's ${sizeWords(all)} are free.`;
  return free / all < LEAST_FREE
    ? wrong("memory", found, "End other programs on this machine, or give it more memory.")
    : right("memory", found);
}

function programLine({ now }: HealthApp, when: When): Diagnosis {
  const since = now() - process.uptime() * 1000;
  return right(
    "program",
    `version ${program.version}, on Node ${process.versions.node}; running since ${when(since)}.`,
  );
}
