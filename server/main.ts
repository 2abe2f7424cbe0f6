/**
 * The process. `main.ts` runs the studio, `--dev` with unbuilt pages, `--demo` with the invented studio (`--fresh` starts
 * it over). Prints its address, stops on a signal with everything saved, and prints one sentence when it cannot run.
 */
import { resolve } from "node:path";
import { DatabaseRefused } from "#db/file/migrations.ts";
import { DatabaseInUse } from "#db/file/writer-lock.ts";
import { DEVICES_WORDS } from "#lib/protocol/places.ts";
import { type Env, EnvError, type Mode, readEnv, turnTelemetryOff } from "#server/base/env.ts";
import { createLog, type Log } from "#server/base/log.ts";
import { createTroubles } from "#server/base/troubles.ts";
import type { Springline } from "#server/context/springline.ts";
import { CannotListen } from "#server/http/listen.ts";
import { type Program, startProgram } from "#server/main/run-server.ts";
import { SigningKeyError } from "#server/signing/keys.ts";

/** The project's folder: the parent of `server/` in the sources, of `dist/` when built. */
const PROJECT_DIR = resolve(import.meta.dirname, "..");

/** Errors that the person who started the server can act on: their message is printed alone. */
const REFUSALS = [EnvError, DatabaseRefused, DatabaseInUse, SigningKeyError, CannotListen];

/**
 * Longer than everything that is waited for while stopping together (`server/main/run-server.ts`), and shorter than a service manager
 * waits before it kills. ms.
 */
const STOP_BOUND_MS = 20_000;
/** The log writes its last lines in this time, ms; its own way to wait for them does not. */
const LAST_LINES_MS = 300;

// The database, its log and the secret are only for the account that runs the server.
process.umask(0o077);
turnTelemetryOff();
// The terminal that started it may be closed: output then goes nowhere.
for (const stream of [process.stdout, process.stderr]) stream.on("error", () => undefined);
await run(process.argv.includes("--demo") ? "demo" : process.argv.includes("--dev") ? "dev" : "live");

async function run(mode: Mode): Promise<void> {
  let log: Log | undefined;
  try {
    const env = readEnv(mode);
    const troubles = createTroubles();
    log = createLog(env.logLevel, { troubles });
    // The bundler is only needed in development.
    if (mode === "dev") await (await import("#server/build/floor-bundle.mjs")).watchFloor(PROJECT_DIR, env.distDir);
    const program = await startProgram({
      projectDir: PROJECT_DIR,
      env,
      log,
      troubles,
      seed,
      fresh: process.argv.includes("--fresh"),
    });
    stopWhenTold(program, log);
    await greet(env, program.app.setUpCode);
  } catch (error) {
    refuse(error, log);
  }
}

/** A known error is printed as one line; anything else is a bug and is printed with its stack. */
function refuse(error: unknown, log: Log | undefined): never {
  const known = REFUSALS.some((kind) => error instanceof kind);
  if (known && error instanceof Error) process.stderr.write(`${error.message}\n`);
  else if (log) log.fatal({ err: error }, "could not start");
  else process.stderr.write(`${error instanceof Error ? error.stack : String(error)}\n`);
  process.exit(1);
}

async function seed(app: Springline): Promise<void> {
  process.stdout.write("Creating the invented studio ...\n");
  const { seedStudio } = await import("#seed/run.ts");
  await seedStudio(app);
}

async function greet(env: Env, setUpCode: string | undefined): Promise<void> {
  const lines = [`Springline is at ${env.origin}`];
  if (setUpCode !== undefined)
    lines.push(`There is no studio yet. Set it up there with the code ${setUpCode.slice(0, 4)}-${setUpCode.slice(4)}`);
  if (env.mode === "demo") {
    const { DEMO_PASSWORD, PEOPLE, STUDIO } = await import("#seed/studio/people.ts");
    lines.push("", `${STUDIO.name}, ${STUDIO.town}: an invented studio. Sign in with the password ${DEMO_PASSWORD} as`);
    for (const { email, roles, name } of PEOPLE)
      lines.push(`  ${email.padEnd(28)}${roles.join(", ").padEnd(10)}${name}`);
    lines.push(
      "",
      `For a cue device: add one as the manager under ${DEVICES_WORDS}, then open ${env.origin}/floor and enter its code.`,
    );
    lines.push("Stop with Ctrl+C. `npm run demo -- --fresh` starts over.");
  }
  process.stdout.write(`${lines.join("\n")}\n`);
}

function stopWhenTold(program: Program, log: Log): void {
  let stopping = false;
  const stop = async (code: number) => {
    if (stopping) return;
    stopping = true;
    log.info({}, "stopping");
    const from = performance.now();
    setTimeout(() => {
      log.fatal({}, "could not stop in time");
      process.exit(1);
    }, STOP_BOUND_MS).unref();
    const unsaved = await program.stop().catch((err: unknown) => {
      log.fatal({ err }, "could not stop cleanly");
      return ["unknown"];
    });
    for (const name of unsaved) log.fatal({ document: name }, "its last changes could not be saved");
    log.info({ ms: Math.round(performance.now() - from) }, "stopped");
    setTimeout(() => process.exit(unsaved.length > 0 ? 1 : code), LAST_LINES_MS);
  };
  for (const signal of ["SIGTERM", "SIGINT"] as const) process.on(signal, () => stop(0));
  for (const event of ["uncaughtException", "unhandledRejection"] as const) {
    process.on(event, (err: unknown) => {
      log.fatal({ err }, event);
      stop(1);
    });
  }
}
