/**
 * Builds the running program and takes it down again: log, database, accounts, live documents, pages, HTTP. Whoever
 * started it (`main.ts`, a test) decides what to say and when to stop.
 */
import { randomUUID } from "node:crypto";
import { createServer } from "node:http";
import { resolve } from "node:path";
import next from "next";
import { type Checkpoints, checkpointBeside } from "#db/checkpoints.ts";
import { studioExists } from "#db/repos/studio-repo.ts";
import { createAuth } from "#server/auth/auth.ts";
import { createChecks } from "#server/check/checks.ts";
import { createThreads, programMark } from "#server/check/threads.ts";
import { fillDemo, openDatabaseFor } from "#server/demo.ts";
import { newPairingCode } from "#server/devices/pairing-code.ts";
import type { Env } from "#server/env.ts";
import { foldBeside } from "#server/fold/fold-beside.ts";
import { createSyncHost } from "#server/host.ts";
import { withBuiltParts } from "#server/http/built-parts.ts";
import { createGate } from "#server/http/gate.ts";
import { noteOtherOrigin } from "#server/http/proxy-signs.ts";
import { type ServeSetup, type Serving, serve } from "#server/http/serve.ts";
import { type SoundnessWatch, watchSoundness } from "#server/http/soundness.ts";
import { attachLine, type LineDoor } from "#server/line/attach.ts";
import { createLineHost } from "#server/line/host.ts";
import type { Log } from "#server/log.ts";
import { needsSetUpCode } from "#server/people/set-up-code.ts";
import { announceCheck } from "#server/plans/announce-check.ts";
import { createSigningKeys } from "#server/signing/keys.ts";
import { type Springline, setSpringline } from "#server/springline.ts";
import { attachSync } from "#server/sync/attach.ts";
import { createRooms, type LiveRooms } from "#server/sync/create-rooms.ts";

/** The project's folder: the parent of `server/` in the sources, of `dist/` when built. */
export const PROJECT_DIR = resolve(import.meta.dirname, "..");
/** How long running requests and a failing disk may keep the process from ending, in ms. */
const STOP_MS = { requests: 3_000, documents: 10_000 };

export interface Program {
  readonly app: Springline;
  /** Where people reach it. */
  readonly url: string;
  /** Saves everything, tells every page, closes everything. Gives the documents that could not be saved. */
  stop(): Promise<readonly string[]>;
}

export interface ProgramSetup {
  readonly env: Env;
  readonly log: Log;
  /** Demo only: throw its database away first. */
  readonly fresh?: boolean;
  /** Fills the demo's empty database; called in demo mode only. */
  seed(app: Springline): Promise<void>;
}

/** Throws EnvError, DatabaseRefused, DatabaseInUse, SigningKeyError or CannotListen, each with one sentence. */
export async function startProgram(setup: ProgramSetup): Promise<Program> {
  const { env, log } = setup;
  const db = openDatabaseFor(env, setup.fresh);
  try {
    const { app, rooms, soundness, checkpoints } = compose(setup, db);
    const pages = createPages(env);
    // The address is taken first, so that one in use costs nothing; whoever asks before all is ready waits.
    let open: (handle: ServeSetup["handle"]) => void = () => undefined;
    const ready = new Promise<ServeSetup["handle"]>((resolve) => {
      open = resolve;
    });
    const isOriginAllowed = (origin: string) => {
      if (origin !== env.origin) noteOtherOrigin(setup, origin);
      return origin === env.origin;
    };
    const door = attachSync({ rooms, isOriginAllowed });
    const line = attachLine({ host: createLineHost(app), clock: lineClock(app), log, isOriginAllowed });
    const serving = await serve({
      env,
      log,
      gate: createGate({ env, hasStudio: () => studioExists(db) }),
      handle: async (request, response) => (await ready)(request, response),
      upgrade: (request, socket, head) =>
        door.handleUpgrade(request, socket, head) ||
        line.handleUpgrade(request, socket, head) ||
        pages.upgrade(request, socket, head),
    });
    if (env.mode === "demo") await fillDemo(db, () => setup.seed(app));
    await pages.start();
    open(env.mode === "dev" ? pages.getRequestHandler() : withBuiltParts(env, pages.getRequestHandler()));
    return { app, url: env.origin, stop: () => stopAll({ app, serving, door, line, pages, soundness, checkpoints }) };
  } catch (error) {
    setSpringline(undefined);
    db.close();
    throw error;
  }
}

interface Composed {
  readonly app: Springline;
  readonly rooms: LiveRooms;
  readonly soundness: SoundnessWatch;
  readonly checkpoints: Checkpoints;
}

function compose({ env, log }: ProgramSetup, db: Springline["db"]): Composed {
  const now = () => Date.now();
  const newId = () => randomUUID();
  const keys = createSigningKeys({ db, secret: env.secret, now });
  keys.check();
  const soundness = watchSoundness({ db, log });
  const setUpCode = needsSetUpCode(env) && !studioExists(db) ? newPairingCode() : undefined;
  const half = { env, log, db, auth: createAuth(db, env, log), keys, setUpCode, now, newId };
  // The rooms ask the host and the host's kinds ask for rooms and checks: some of them come second.
  const app: Springline = {
    ...half,
    get rooms() {
      return rooms;
    },
    get checks() {
      return checks;
    },
  };
  const checks = createChecks({
    app,
    runner: createThreads({ databaseFile: env.databaseFile, log }),
    programMark: programMark(newId()),
    heard: (answer) => announceCheck(app, answer),
  });
  const rooms = createRooms({ db, log, now, newId, host: createSyncHost(app), fold: foldBeside(env.databaseFile) });
  setSpringline(app);
  return { app, rooms, soundness, checkpoints: checkpointBeside(db, { log }) };
}

/** The floor's clock: it never goes back and is named, so that a screen notices another run of the server. */
const lineClock = ({ newId, now }: Springline) => ({ now: () => performance.now(), wall: now, epoch: newId() });

interface Pages {
  start(): Promise<void>;
  getRequestHandler(): ServeSetup["handle"];
  upgrade: ServeSetup["upgrade"];
  close(): Promise<void>;
}

/** Next gets a server that never listens: in development its hot reload is handed the upgrades that are its own. */
function createPages(env: Env): Pages {
  const dev = env.mode === "dev";
  const dummy = createServer();
  const pages = next({ dev, dir: PROJECT_DIR, hostname: env.host, port: env.port, httpServer: dummy });
  return {
    start: pages.prepare.bind(pages),
    getRequestHandler: () => pages.getRequestHandler(),
    upgrade: (request, socket, head) => dev && isHotReload(request.url) && dummy.emit("upgrade", request, socket, head),
    close: () => pages.close(),
  };
}

const isHotReload = (url = "") => /^\/_next\/(hmr|webpack-hmr)(\?|$)/.test(url);

interface Running {
  readonly app: Springline;
  readonly serving: Serving;
  readonly door: { detach(): void };
  readonly line: LineDoor;
  readonly pages: Pages;
  readonly soundness: SoundnessWatch;
  readonly checkpoints: Checkpoints;
}

/** Documents first: their pages hear `stopping` while the words they sent are being written. */
async function stopAll(running: Running): Promise<readonly string[]> {
  const { app, serving, door, line, pages, soundness, checkpoints } = running;
  soundness.stop();
  door.detach();
  line.stop();
  const closed = serving.close(STOP_MS.requests);
  const { unsaved } = await app.rooms.stop(STOP_MS.documents);
  await app.checks.stop();
  await closed;
  await pages.close().catch((err: unknown) => app.log.warn({ err }, "the pages did not close"));
  setSpringline(undefined);
  await checkpoints.stop();
  app.db.close();
  return unsaved;
}
