/**
 * What studios on one machine cost while nobody is there: memory, start, processor time; and how long one stands still while it is
 * moved, with a small and a large database. The built program (`npm run build`), started as its unit does. Figures, no targets.
 */
import { openDatabase } from "#db/connection.ts";
import { databaseIn, folderOf, type HostFolder } from "#server/host/host-folder.ts";
import { moveStudio } from "#server/host/move-studio.ts";
import { runLine } from "#server/host/run-line.ts";
import { ROOT } from "#tests/support/bundle-server.ts";
import {
  type BuiltStudio,
  benchHostFolder,
  benchStudio,
  cpuSeconds,
  makeLarge,
  memoryOf,
  removeHost,
  startBuilt,
} from "./built-studio.ts";

const PORTS = [24_000, 24_999] as const;
/** After its start a process tidies up; this is waited before anything is counted. */
const SETTLE_MS = 20_000;
const WATCH_MS = 60_000;
const LARGE_MB = 200;
const AT_ONCE = 5;

const wait = (ms: number) => new Promise((done) => setTimeout(done, ms));
const sum = (all: readonly number[]) => all.reduce((a, b) => a + b, 0);

export async function benchHost(counts: readonly number[]): Promise<boolean> {
  const host = benchHostFolder([...PORTS]);
  const running: BuiltStudio[] = [];
  try {
    console.log(row(["idle studios", "first start", "processor s", "RSS each", "PSS each", "PSS of all", "s an hour"]));
    for (const count of counts) {
      await growTo(count, host, running);
      await wait(SETTLE_MS);
      await sayIdle(running);
    }
    const [first] = running;
    if (first) await sayVisited(first);
    for (const studio of running.splice(0)) await studio.stop();
    for (const megabytes of [0, LARGE_MB]) await sayMoved(host, megabytes);
    return true;
  } finally {
    for (const studio of running) await studio.stop();
    removeHost(host);
  }
}

/** The first one alone, so that its start is a start; then some at once. */
async function growTo(count: number, host: HostFolder, running: BuiltStudio[]): Promise<void> {
  while (running.length < count) {
    const some = Array.from({ length: running.length === 0 ? 1 : Math.min(AT_ONCE, count - running.length) }, (_, n) =>
      benchStudio(host, `s${running.length + n}`),
    );
    running.push(...(await Promise.all((await Promise.all(some)).map(startBuilt))));
  }
}

async function sayIdle(running: readonly BuiltStudio[]): Promise<void> {
  const used = () => sum(running.map(({ pid }) => cpuSeconds(pid)));
  const before = used();
  await wait(WATCH_MS);
  const perHour = ((used() - before) / running.length) * (3_600_000 / WATCH_MS);
  const memory = running.map(({ pid }) => memoryOf(pid));
  const mean = (of: (one: BuiltStudio) => number) => sum(running.map(of)) / running.length;
  const [rss, pss] = [sum(memory.map((one) => one.rss)), sum(memory.map((one) => one.pss))];
  console.log(
    row([
      String(running.length),
      `${((running[0]?.startMs ?? 0) / 1000).toFixed(1)} s`,
      mean(({ startCpu }) => startCpu).toFixed(1),
      `${(rss / running.length).toFixed(0)} MB`,
      `${(pss / running.length).toFixed(0)} MB`,
      `${pss.toFixed(0)} MB`,
      perHour.toFixed(1),
    ]),
  );
}

/** A page is loaded when it is first asked for: what that takes the one who asks, and the memory. */
async function sayVisited({ at, pid }: BuiltStudio): Promise<void> {
  const asked = async () => {
    const from = performance.now();
    await (await fetch(`http://${at}/sign-in`)).text();
    return performance.now() - from;
  };
  const [first, second] = [await asked(), await asked()];
  await wait(2000);
  const { rss, pss } = memoryOf(pid);
  console.log(
    `a first page: ${first.toFixed(0)} ms, again: ${second.toFixed(0)} ms; then ${rss.toFixed(0)} MB RSS, ${pss.toFixed(0)} MB PSS`,
  );
}

async function sayMoved(from: HostFolder, megabytes: number): Promise<void> {
  const to = benchHostFolder([PORTS[0] + 500, PORTS[1]]);
  const name = `moved-${megabytes}`;
  const studio = await benchStudio(from, name);
  if (megabytes > 0) {
    const db = openDatabase(databaseIn(studio.folder));
    makeLarge((sql) => db.raw.exec(sql), megabytes);
    db.close();
  }
  const start = `set -a; . "$FOLDER/studio.env"; cd "${ROOT}"; "${process.execPath}" --enable-source-maps dist/main.js >"$FOLDER/log" 2>&1 & echo $! >"${to.root}/pid"`;
  const stop = `kill $(cat "${to.root}/pid")`;
  const failed = await runLine(start, studio);
  if (failed !== null) throw new Error(failed);
  await wait(6000);
  const began = performance.now();
  const moved = await moveStudio({
    ...{ from, to, name, at: new Date(), say: () => undefined },
    lines: { stopHere: stop, startHere: start, startThere: start },
  });
  const all = performance.now() - began;
  console.log(
    `moved, ${megabytes} MB: stood still for ${((moved.stoodStillMs ?? Number.NaN) / 1000).toFixed(1)} s of ${(all / 1000).toFixed(1)} s; ${moved.difference?.blocks} blocks written twice`,
  );
  await runLine(stop, { name, folder: folderOf(to, name) });
  await wait(2000);
  removeHost(to);
}

const row = (cells: readonly string[]): string => cells.map((cell) => cell.padStart(15)).join("");
