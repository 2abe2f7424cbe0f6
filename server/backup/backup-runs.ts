/** The timer that makes backups when they are due. Made by `server/main` alone. */
import { readStudio } from "#db/repos/studio-repo.ts";
import { isBackupDue, nextBackupAt } from "#lib/backups/due.ts";
import type { BackupState, Backups } from "#server/context/care.ts";
import type { Springline } from "#server/context/springline.ts";
import { installationId } from "#server/http/installation-id.ts";
import { studioZone } from "#server/month-facts/month-settings.ts";
import program from "../../package.json" with { type: "json" };
import type { BackupEnd, BackupJob } from "./backup-job.ts";
import { readBackupSettings } from "./backup-settings.ts";
import { type KeptBackupState, keepBackupState, keptBackupState } from "./backup-state.ts";
import { type BackupThread, backupInThread } from "./backup-thread.ts";
import { sourceOf, tellBackupFailed } from "./server-source.ts";

type App = Pick<Springline, "db" | "env" | "now" | "log">;

const EVERY_MS = 20_000;
const MINUTE_MS = 60_000;
/** Pauses after the first, second, ... failure; the last one goes on. Our own choice. */
const RETRY_MS: readonly number[] = [10, 60, 180, 360].map((minutes) => minutes * MINUTE_MS);
/** Longer than this is made up of a disk that does not answer: the thread is ended, and it is tried again. */
const LONGEST_MS = 3 * 60 * MINUTE_MS;

export interface BackupRuns extends Backups {
  start(): void;
  /** Looks once whether one is due. Resolves when nothing is being made. Never rejects. */
  look(): Promise<void>;
  stop(): Promise<void>;
}

export interface BackupRunsSetup {
  readonly app: App;
  readonly everyMs?: number;
  readonly thread?: (job: BackupJob) => BackupThread;
}

interface Course {
  kept: KeptBackupState;
  failures: number;
  retryAt: number;
  running: { readonly since: number; readonly thread: BackupThread; readonly done: Promise<void> } | null;
}

export function createBackupRuns({ app, everyMs = EVERY_MS, thread = backupInThread }: BackupRunsSetup): BackupRuns {
  const course: Course = { kept: keptBackupState(app.db), failures: 0, retryAt: 0, running: null };
  let timer: NodeJS.Timeout | undefined;
  const begin = () => {
    if (course.running || app.db.damage.known !== null) return;
    const job = jobOf(app);
    const started = thread(job);
    const done = follow(app, course, job, started);
    course.running = { since: job.at, thread: started, done };
  };
  const look = async () => {
    if (isDue(app, course)) begin();
    await course.running?.done;
  };
  return {
    begin,
    look,
    state: () => stateOf(app, course),
    start() {
      timer = setInterval(() => void look(), everyMs);
      timer.unref();
      void look();
    },
    async stop() {
      clearInterval(timer);
      await course.running?.thread.stop();
    },
  };
}

function question(app: App, course: Course) {
  const studio = readStudio(app.db);
  const settings = readBackupSettings(app);
  if (!studio || !settings.on) return undefined;
  const lastAt = course.kept.last?.at ?? studio.madeAt;
  return { time: settings.time, zone: studioZone(app), lastAt, now: app.now() };
}

function isDue(app: App, course: Course): boolean {
  if (course.running || app.db.damage.known !== null || app.now() < course.retryAt) return false;
  const asked = question(app, course);
  return asked !== undefined && isBackupDue(asked);
}

function stateOf(app: App, course: Course): BackupState {
  const asked = question(app, course);
  const next = asked && nextBackupAt(asked);
  const nextAt = next === undefined ? null : Math.max(next, course.retryAt);
  return { ...course.kept, runningSince: course.running?.since ?? null, nextAt };
}

function jobOf(app: App): BackupJob {
  const { folder, keep } = readBackupSettings(app);
  const installation = installationId(app.env.secret);
  const zone = studioZone(app);
  return { place: sourceOf(app), folder, installation, keep, zone, at: app.now(), program: program.version };
}

async function follow(app: App, course: Course, job: BackupJob, thread: BackupThread): Promise<void> {
  const tooLong = setTimeout(() => void thread.stop(), LONGEST_MS);
  tooLong.unref();
  const end = await thread.end.catch((err: unknown): BackupEnd => {
    app.log.error({ err }, "the thread of a backup failed");
    return { made: null, kept: null, problem: "A backup broke off. It is tried again." };
  });
  clearTimeout(tooLong);
  course.running = null;
  // The program is stopping: what was begun is made up after the next start.
  if (app.db.raw.open) settle(app, course, job, end);
}

function settle(app: App, course: Course, job: BackupJob, { made, kept, problem }: BackupEnd): void {
  const now = app.now();
  course.failures = made ? 0 : course.failures + 1;
  const pause = RETRY_MS[course.failures - 1] ?? RETRY_MS.at(-1) ?? MINUTE_MS;
  course.retryAt = made ? 0 : now + pause;
  const last = made ? { ...made, folder: job.folder.path, tookMs: Math.max(0, now - job.at) } : course.kept.last;
  course.kept = {
    last,
    problem: problem === null ? null : { at: now, says: problem, nextAt: made ? null : course.retryAt },
    kept: kept ?? course.kept.kept,
  };
  if (problem === null) app.log.info({ took: now - job.at }, "a backup was made and tested");
  else app.log.error({ problem }, "a backup could not be made");
  try {
    keepBackupState(app, course.kept);
    if (problem !== null) tellBackupFailed(app, problem);
  } catch (err) {
    app.log.error({ err }, "the end of a backup could not be noted");
  }
}
