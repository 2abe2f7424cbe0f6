/**
 * The timer that keeps a copy of the database in the copy folder, at most a minute old while a copy takes less than three seconds.
 * Nothing of it is written to the database: that would be a change, and be copied. Made by `server/main` alone.
 */
import { changeMark } from "#db/change-mark.ts";
import { studioExists } from "#db/repos/studio-repo.ts";
import type { Copies, DiskCopyState } from "#server/context/care.ts";
import type { Springline } from "#server/context/springline.ts";
import { installationId } from "#server/http/installation-id.ts";
import type { JobThread } from "#server/worker-threads/job-thread.ts";
import { readBackupSettings } from "./backup-settings.ts";
import { copyInThread } from "./backup-thread.ts";
import type { CopyEnd, CopyJob } from "./copy-job.ts";
import type { BackupFolder } from "./folder.ts";
import { sourceOf, tellBackupFailed } from "./server-source.ts";

type App = Pick<Springline, "db" | "env" | "now" | "log">;

const LOOK_MS = 2_000;
/** From the beginning of one copy to the next, where something has changed. */
const PACE_MS = 30_000;
/** A copy takes at most a twentieth of the time: the next begins no sooner than this many times as long after it. */
const SHARE = 20;
const RETRY_MS = 60_000;
/** Managers are told once a copy has failed this often in a row. Our own choice. */
const TOLD_AFTER = 3;

export interface CopyRuns extends Copies {
  start(): void;
  /** Looks once whether a copy is due. Resolves when none is being made. Never rejects. */
  look(): Promise<void>;
  stop(): Promise<void>;
}

export interface CopyRunsSetup {
  readonly app: App;
  readonly lookMs?: number;
  readonly paceMs?: number;
  readonly thread?: (job: CopyJob) => JobThread<CopyEnd>;
}

interface Course extends Omit<DiskCopyState, "paceMs"> {
  failures: number;
  /** What the database's mark was when the last good copy began. */
  copied: string | null;
  nextAt: number;
  paceMs: number;
  running: { readonly thread: JobThread<CopyEnd>; readonly done: Promise<void> } | null;
  last: DiskCopyState["last"];
  changedAt: number | null;
  problem: DiskCopyState["problem"];
}

export function createCopyRuns(setup: CopyRunsSetup): CopyRuns {
  const { app, lookMs = LOOK_MS, paceMs = PACE_MS } = setup;
  const nothing = { last: null, changedAt: null, problem: null, running: null, copied: null };
  const course: Course = { ...nothing, failures: 0, nextAt: 0, paceMs };
  let timer: NodeJS.Timeout | undefined;
  const look = async () => {
    lookOnce(setup, course);
    await course.running?.done;
  };
  return {
    look,
    state: () => ({ last: course.last, changedAt: course.changedAt, problem: course.problem, paceMs: course.paceMs }),
    start() {
      timer = setInterval(() => lookSafely(app, () => lookOnce(setup, course)), lookMs);
      timer.unref();
    },
    async stop() {
      clearInterval(timer);
      await course.running?.thread.stop();
    },
  };
}

function lookSafely(app: App, look: () => void): void {
  try {
    look();
  } catch (err) {
    app.log.error({ err }, "it could not be seen whether a copy is due");
  }
}

function lookOnce(setup: CopyRunsSetup, course: Course): void {
  const { app } = setup;
  const folder = readBackupSettings(app).copyFolder;
  if (!folder || app.db.damage.known !== null || !studioExists(app.db)) return;
  const mark = changeMark(app.db);
  if (mark !== course.copied) course.changedAt ??= app.now();
  if (course.running || course.changedAt === null || app.now() < course.nextAt) return;
  begin(setup, course, { folder, mark });
}

interface Begun {
  readonly folder: BackupFolder;
  readonly mark: string;
}

function begin({ app, paceMs = PACE_MS, thread = copyInThread }: CopyRunsSetup, course: Course, begun: Begun): void {
  const at = app.now();
  const started = thread({
    ...{ place: sourceOf(app), folder: begun.folder, at },
    installation: installationId(app.env.secret),
  });
  const broken = { made: null, problem: "A copy broke off. It is tried again.", tookMs: 0 };
  const follow = async () => {
    const end = await started.end.catch((): CopyEnd => broken);
    course.running = null;
    if (!app.db.raw.open) return;
    const { tookMs } = end;
    course.paceMs = Math.max(paceMs, SHARE * tookMs);
    course.nextAt = at + course.paceMs;
    if (end.made) succeed(course, begun.mark, { ...end.made, folder: begun.folder.path, tookMs });
    else fail(app, course, end.problem ?? broken.problem);
  };
  course.running = { thread: started, done: follow() };
}

function succeed(course: Course, mark: string, last: NonNullable<DiskCopyState["last"]>): void {
  // What was written since it began is seen at the next look.
  Object.assign(course, { last, copied: mark, changedAt: null, problem: null, failures: 0 });
}

function fail(app: App, course: Course, says: string): void {
  const now = app.now();
  course.failures++;
  course.nextAt = Math.max(course.nextAt, now + RETRY_MS);
  course.problem = { at: now, says, nextAt: course.nextAt };
  app.log.error({ says }, "a copy of the database could not be made");
  if (course.failures !== TOLD_AFTER) return;
  try {
    tellBackupFailed(app, says);
  } catch (err) {
    app.log.error({ err }, "managers could not be told of a copy that failed");
  }
}
