/** The built program as people use it: its own process and data folder, with the invented studio in it. */
import { type ChildProcess, spawn } from "node:child_process";
import { cpSync, mkdtempSync, rmSync } from "node:fs";
import { createServer } from "node:net";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";

const ROOT = resolve(import.meta.dirname, "../..");

export interface RunningApp {
  readonly url: string;
  readonly dataDir: string;
  /** Stops the process and waits until it has ended. The data stays. */
  stop(signal?: NodeJS.Signals): Promise<void>;
  /** Starts it again with the same address and data. */
  start(): Promise<void>;
  /** Stops it and removes its data. */
  remove(): Promise<void>;
}

export async function freePort(): Promise<number> {
  const server = createServer();
  await new Promise<void>((done) => server.listen(0, "127.0.0.1", done));
  const address = server.address();
  await new Promise((done) => server.close(done));
  if (address === null || typeof address === "string") throw new Error("no port");
  return address.port;
}

/** Where the build put the server: `dist`, or `dist-x` for a second build in `SPRINGLINE_DIST=.next-x`. */
const BUILT = `${(process.env.SPRINGLINE_DIST ?? ".next").replace(/^\.next/, "dist")}/main.js`;

/** Set while browser tests run: a data folder with the invented studio in it, made once (`seeded-studio.ts`) and copied. */
const SEEDED = "SPRINGLINE_SEEDED";

/** Seeds the invented studio once for all that follow. Answers what removes it again. */
export async function seedOnce(): Promise<() => void> {
  const app = await startApp({ demo: true });
  await app.stop();
  process.env[SEEDED] = app.dataDir;
  return () => rmSync(app.dataDir, { recursive: true, force: true });
}

/** Starts the built server (build first) on a free port; `demo` gives it the invented studio. */
export async function startApp(options: { demo: boolean; dist?: string } = { demo: true }): Promise<RunningApp> {
  const port = await freePort();
  const url = `http://localhost:${port}`;
  const dataDir = mkdtempSync(join(tmpdir(), "springline-app-"));
  const seeded = process.env[SEEDED];
  if (options.demo && seeded) cpSync(seeded, dataDir, { recursive: true });
  let child: ChildProcess | undefined;

  const start = async () => {
    const output: string[] = [];
    const args = [options.dist ?? BUILT, ...(options.demo ? ["--demo"] : [])];
    child = spawn(process.execPath, args, {
      cwd: ROOT,
      env: {
        ...process.env,
        NODE_ENV: "production",
        SPRINGLINE_DATA: dataDir,
        SPRINGLINE_URL: url,
        PORT: String(port),
        SPRINGLINE_LOG: "warn",
      },
      stdio: ["ignore", "pipe", "pipe"],
    });
    child.stdout?.on("data", (data: Buffer) => output.push(data.toString()));
    child.stderr?.on("data", (data: Buffer) => output.push(data.toString()));
    await until(async () => {
      if (child?.exitCode !== null) throw new Error(`the program ended by itself:\n${output.join("")}`);
      return isHealthy(url);
    }, 90_000);
  };
  const stop = async (signal: NodeJS.Signals = "SIGTERM") => {
    const running = child;
    if (!running || running.exitCode !== null || running.signalCode !== null) return;
    const gone = new Promise((done) => running.once("exit", done));
    running.kill(signal);
    await gone;
  };
  await start();
  return {
    url,
    dataDir,
    start,
    stop,
    remove: async () => {
      await stop("SIGKILL");
      rmSync(dataDir, { recursive: true, force: true });
    },
  };
}

async function isHealthy(url: string): Promise<boolean> {
  try {
    return (await fetch(`${url}/api/health`)).ok;
  } catch {
    return false;
  }
}

/** Asks again every 100 ms until `check` holds; throws after `withinMs`. */
export async function until(check: () => Promise<boolean> | boolean, withinMs: number): Promise<void> {
  const deadline = Date.now() + withinMs;
  while (!(await check())) {
    if (Date.now() > deadline) throw new Error(`did not come true within ${withinMs} ms`);
    await new Promise((done) => setTimeout(done, 100));
  }
}
