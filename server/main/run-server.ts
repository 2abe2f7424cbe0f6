/** Starts the program, from the database to HTTP, and stops it again. `server/main.ts` decides what to print and when to stop. */
import type { Checkpoints } from "#db/file/checkpoints.ts";
import { studioExists } from "#db/repos/studio-repo.ts";
import type { BackupRuns } from "#server/backup/backup-runs.ts";
import type { CopyRuns } from "#server/backup/copy-runs.ts";
import type { Env } from "#server/base/env.ts";
import type { Log } from "#server/base/log.ts";
import type { Troubles } from "#server/base/troubles.ts";
import { type Springline, setSpringline } from "#server/context/springline.ts";
import type { ClockWatch } from "#server/health/clock-watch.ts";
import type { DamageWatch } from "#server/health/damage-watch.ts";
import { withBuiltParts } from "#server/http/built-parts.ts";
import { createGate } from "#server/http/gate.ts";
import { noteOtherOrigin } from "#server/http/proxy-signs.ts";
import { type ServeSetup, type Serving, serve } from "#server/http/serve.ts";
import { attachLine, type LineDoor } from "#server/line/attach.ts";
import { createLineHost } from "#server/line/host.ts";
import { type MailRuns, startMailRuns } from "#server/mail/mail-runs.ts";
import { fillDemo, openDatabaseFor } from "#server/main/demo-database.ts";
import type { MetricsServing } from "#server/metrics/serve-metrics.ts";
import { startClassRuns } from "#server/programme/class-runs.ts";
import { attachSync } from "#server/sync/attach.ts";
import type { DocumentRooms } from "#server/sync/document-rooms.ts";
import { compose } from "./compose.ts";
import { type Measuring, measure } from "./measure.ts";
import { createPages, type Pages } from "./pages.ts";

/** How long running requests and a failing disk may delay the end of the process, in ms. */
const STOP_MS = { requests: 3_000, documents: 10_000 };

export interface Program {
  readonly app: Springline;
  /** The address that people open. */
  readonly url: string;
  /** Saves everything, tells every page and closes everything. Returns the documents that could not be saved. */
  stop(): Promise<readonly string[]>;
}

export interface ProgramSetup {
  /** The folder that holds `app/`. */
  readonly projectDir: string;
  readonly env: Env;
  readonly log: Log;
  /** Where the log's errors and warnings are noted. */
  readonly troubles: Troubles;
  /** Demo only: delete its database first. */
  readonly fresh?: boolean;
  /** Fills the demo's empty database; called in demo mode only. */
  seed(app: Springline): Promise<void>;
}

/** Throws EnvError, DatabaseRefused, DatabaseInUse, SigningKeyError or CannotListen, each with one sentence. */
export async function startProgram(setup: ProgramSetup): Promise<Program> {
  const { env, log } = setup;
  const db = openDatabaseFor(env, setup.fresh);
  try {
    const measuring = await measure(setup);
    const composed = compose({ ...setup, meter: measuring.sync }, db);
    const { app, rooms } = composed;
    const pages = createPages(env, setup.projectDir);
    // The port is taken first, so that a port in use is noticed at once. Requests wait until everything is ready.
    let open: (handle: ServeSetup["handle"]) => void = () => undefined;
    const ready = new Promise<ServeSetup["handle"]>((resolve) => {
      open = resolve;
    });
    const { door, line } = socketDoors(setup, { app, rooms, measuring });
    const serving = await serve({
      ...{ env, log },
      gate: createGate({ env, hasStudio: () => studioExists(db) }),
      handle: async (request, response) => (await ready)(request, response),
      upgrade: (request, socket, head) =>
        door.handleUpgrade(request, socket, head) ||
        line.handleUpgrade(request, socket, head) ||
        pages.upgrade(request, socket, head),
      ...(measuring.answered ? { answered: measuring.answered } : {}),
    });
    const metrics = await measuring.serve(app, () => line.lines.seated());
    if (env.mode === "demo") await fillDemo(db, () => setup.seed(app));
    await pages.start();
    open(env.mode === "dev" ? pages.getRequestHandler() : withBuiltParts(env, pages.getRequestHandler()));
    const [mails, stopClasses] = [startMailRuns({ app }), startClassRuns(app)];
    for (const runs of [composed.backups, composed.copies]) runs.start();
    const running = { ...composed, serving, door, line, pages, mails, stopClasses, metrics };
    return { app, url: env.origin, stop: () => stopAll(running) };
  } catch (error) {
    setSpringline(undefined);
    db.close();
    throw error;
  }
}

interface DoorParts {
  readonly app: Springline;
  readonly rooms: DocumentRooms;
  readonly measuring: Measuring;
}

/** What takes the sockets: of documents, and of the screens of a room. */
function socketDoors({ env, log }: ProgramSetup, { app, rooms, measuring }: DoorParts) {
  const isOriginAllowed = (origin: string) => {
    if (origin !== env.origin) noteOtherOrigin({ env, log }, origin);
    return origin === env.origin;
  };
  const door = attachSync({ rooms, isOriginAllowed, ...measuring.onClosed("document") });
  const line = attachLine({
    ...{ host: createLineHost(app), clock: lineClock(app), log, isOriginAllowed },
    ...measuring.onClosed("floor"),
  });
  return { door, line };
}

/** The floor's clock: it never goes back and has an id, so that a screen notices a restart of the server. */
const lineClock = ({ newId, now }: Springline) => ({ now: () => performance.now(), wall: now, epoch: newId() });

interface Running {
  readonly app: Springline;
  readonly serving: Serving;
  readonly door: { detach(): void };
  readonly line: LineDoor;
  readonly pages: Pages;
  readonly soundness: DamageWatch;
  readonly clock: ClockWatch;
  readonly checkpoints: Checkpoints;
  readonly backups: BackupRuns;
  readonly copies: CopyRuns;
  readonly mails: MailRuns;
  readonly stopClasses: () => void;
  readonly metrics: MetricsServing | undefined;
}

/**
 * Nobody is let in any more; what has arrived is passed on and synced, then pages and screens are told to come back in a moment,
 * while requests under way are answered.
 */
async function stopAll(running: Running): Promise<readonly string[]> {
  const { app, serving, door, line, pages, soundness, clock, checkpoints, backups, copies, mails, stopClasses } =
    running;
  soundness.stop();
  clock.stop();
  stopClasses();
  const mailed = mails.stop();
  door.detach();
  line.stop();
  const closed = serving.close(STOP_MS.requests);
  const { unsaved } = await app.documents.stop(STOP_MS.documents);
  await app.checks.stop();
  await closed;
  await pages.close().catch((err: unknown) => app.log.warn({ err }, "the pages did not close"));
  await mailed;
  setSpringline(undefined);
  await Promise.all([backups.stop(), copies.stop()]);
  await checkpoints.stop();
  running.metrics?.close();
  app.db.close();
  return unsaved;
}
