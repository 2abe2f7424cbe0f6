/** The built program as a studio of a host, and what the system says that its process takes. Linux. */
import { type ChildProcess, spawn } from "node:child_process";
import { copyFileSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { performance } from "node:perf_hooks";
import { copyDatabase } from "#db/file/copy.ts";
import { addStudio } from "#server/host/add-studio.ts";
import { databaseIn, folderOf, type HostFolder, openHost, type PlacedStudio } from "#server/host/host-folder.ts";
import { askHealth } from "#server/host/list-studios.ts";
import { ROOT } from "#tests/support/bundle-server.ts";
import { openStudio } from "#tests/support/plan-studio.ts";

/** As `server/run/springline@.service` starts it. */
const FLAGS = /^ExecStart=\S+ (.*?)dist\/main\.js$/m
  .exec(readFileSync(join(ROOT, "server/run/springline@.service"), "utf8"))?.[1]
  ?.trim()
  .split(" ") as string[];
const BUILT = `${(process.env.SPRINGLINE_DIST ?? ".next").replace(/^\.next/, "dist")}/main.js`;

/** A new host in a folder that the caller removes. */
export function benchHostFolder(ports: readonly [number, number]): HostFolder {
  const root = mkdtempSync(join(tmpdir(), "springline-bench-host-"));
  writeFileSync(join(root, "host.json"), JSON.stringify({ ports, proxySocket: join(root, "none.sock") }));
  return openHost(root);
}

/** A studio with people and rooms in it. */
export async function benchStudio(host: HostFolder, name: string): Promise<PlacedStudio> {
  const { studio } = await addStudio(host, name, `https://${name}.example.org`);
  const s = openStudio({ clock: Date.now() });
  await copyDatabase(s.db.file, databaseIn(folderOf(host, name)));
  copyFileSync(join(s.app.env.dataDir, "secret"), join(studio.folder, "data", "secret"));
  await s.stop();
  return studio;
}

export interface BuiltStudio {
  readonly at: string;
  readonly pid: number;
  /** ms until its health answered. */
  readonly startMs: number;
  /** Processor seconds until then. */
  readonly startCpu: number;
  stop(): Promise<void>;
}

export async function startBuilt({ folder, env }: PlacedStudio): Promise<BuiltStudio> {
  const vars = Object.fromEntries(
    readFileSync(join(folder, "studio.env"), "utf8")
      .split("\n")
      .filter((line) => /^[A-Z_]+=/.test(line))
      .map((line) => [line.slice(0, line.indexOf("=")), line.slice(line.indexOf("=") + 1)]),
  );
  const at = `127.0.0.1:${env.port}`;
  const from = performance.now();
  const child: ChildProcess = spawn(process.execPath, [...FLAGS, BUILT], {
    ...{
      cwd: ROOT,
      stdio: "ignore",
      env: {
        NODE_ENV: "production",
        PATH: process.env.PATH,
        SPRINGLINE_LOG: "warn",
        SPRINGLINE_LAZY_PAGES: "1",
        ...vars,
      },
    },
  });
  const pid = child.pid ?? 0;
  while ((await askHealth(at)).answers !== "yes") {
    if (child.exitCode !== null) throw new Error("The program ended by itself. Build it first: npm run build");
    await new Promise((done) => setTimeout(done, 20));
  }
  const startMs = performance.now() - from;
  return {
    ...{ at, pid, startMs, startCpu: cpuSeconds(pid) },
    async stop() {
      const gone = new Promise((done) => child.once("exit", done));
      if (child.exitCode === null && child.kill("SIGTERM")) await gone;
    },
  };
}

/** Of a process's threads so far, as the scheduler counts (ns); ticks would count a wake-up of 50 µs as 10 ms or as nothing. */
export function cpuSeconds(pid: number): number {
  const threads = readdirSync(`/proc/${pid}/task`);
  const ns = threads.map((id) => Number(readFileSync(`/proc/${pid}/task/${id}/schedstat`, "utf8").split(" ")[0]));
  return ns.reduce((sum, one) => sum + one, 0) / 1e9;
}

/** MB of 1,024 kB. `pss`: pages that several processes share count in parts. */
export function memoryOf(pid: number): { readonly rss: number; readonly pss: number } {
  const text = readFileSync(`/proc/${pid}/smaps_rollup`, "utf8");
  const mb = (name: string) => Number(new RegExp(`^${name}:\\s+(\\d+) kB`, "m").exec(text)?.[1]) / 1024;
  return { rss: mb("Rss"), pss: mb("Pss") };
}

export const removeHost = ({ root }: HostFolder): void => rmSync(root, { recursive: true, force: true });

/** Fills a studio's log with so many bytes that do not compress, in documents that nobody opens. */
export function makeLarge(write: (sql: string) => void, megabytes: number): void {
  write("insert into document (name, generation, created_at) values ('plan/old', 'g', 0)");
  const rows = megabytes * 16;
  write(
    `with recursive n(i) as (select 1 union all select i + 1 from n where i < ${rows}) insert into doc_update (name, bytes, actor_id, at) select 'plan/old', randomblob(65000), 'a', i from n`,
  );
}
