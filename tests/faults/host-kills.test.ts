/**
 * Commands on a host are killed before each of the changes that they make on the disk. What is there then is the old or the new,
 * the same command given again ends it, and never may two places open one studio.
 */
import { spawnSync } from "node:child_process";
import { cpSync, existsSync, readdirSync, readFileSync, rmSync } from "node:fs";
import { join } from "node:path";
import { afterAll, beforeAll, expect, test, vi } from "vitest";
import { openDatabase } from "#db/connection.ts";
import { insertStudio } from "#db/repos/studio-repo.ts";
import { addStudio } from "#server/host/add-studio.ts";
import { databaseIn, folderOf, incomingOf, studiosOf } from "#server/host/host-folder.ts";
import { mapIsRight } from "#server/host/hosts-map.ts";
import { bundleServer, ROOT } from "#tests/support/bundle-server.ts";
import { commandHere } from "#tests/support/command-here.ts";
import { type TestHostFolder, testHost } from "#tests/support/host-rig.ts";
import { often } from "#tests/support/long.ts";

const OUT = join(ROOT, "dist-tests/host-kills");
const KILL = join(ROOT, "tests/support/killed-at-step.mjs");
/** Every so many steps; each of them in the long run. */
const STRIDE = { short: often(6, 1), move: often(9, 1) };

beforeAll(async () => {
  await bundleServer({ studio: "server/cli/studio.ts" }, OUT, "external");
});
const removals: (() => void)[] = [];
afterAll(() => {
  for (const remove of removals) remove();
});

/** True when it was killed. */
function killed({ host }: TestHostFolder, words: readonly string[], killAt: number): boolean {
  const args = ["--import", KILL, join(OUT, "studio.js"), ...words];
  const env = { ...process.env, SPRINGLINE_STUDIOS: host.root, KILL_AT: String(killAt) };
  const { status, signal, stderr, stdout } = spawnSync(process.execPath, args, { cwd: ROOT, env, encoding: "utf8" });
  if (signal !== "SIGKILL" && status !== 0) throw new Error(`${words.join(" ")}: ${stderr}${stdout}`);
  return signal === "SIGKILL";
}

/** The same command again, which nothing stops. */
async function again({ host }: TestHostFolder, words: readonly string[]): Promise<void> {
  vi.stubEnv("SPRINGLINE_STUDIOS", host.root);
  const { code, err } = await commandHere("studio", words);
  vi.unstubAllEnvs();
  expect([code, err]).toEqual([undefined, ""]);
}

async function hostWith(...names: readonly string[]): Promise<TestHostFolder> {
  const place = await testHost();
  removals.push(place.remove);
  for (const name of names) await addStudio(place.host, name, `https://${name}.example.org`);
  return place;
}

/** Calls `look` after a kill before each `stride`-th change, until the command ends by itself; answers how often it was killed. */
async function eachKill(stride: number, run: (killAt: number) => Promise<boolean>): Promise<number> {
  let kills = 0;
  for (let at = 1; await run(at); at += stride) kills++;
  return kills;
}

const namesOf = ({ host }: TestHostFolder) => studiosOf(host).map(({ name }) => name);

test("adding: there is the studio whole or none, and the same command ends it", { timeout: 120_000 }, async () => {
  const words = ["add", "quay", "--url", "https://quay.example.org"];
  const kills = await eachKill(STRIDE.short, async (at) => {
    const place = await hostWith("harbour");
    const isKilled = killed(place, words, at);
    const whole = namesOf(place).includes("quay");
    if (whole) expect(existsSync(join(folderOf(place.host, "quay"), "data"))).toBe(true);
    const map = readFileSync(join(place.host.root, "hosts.map"), "utf8");
    expect(map).toMatch(/^harbour\.example\.org \S+\n(quay\.example\.org \S+\n)?$/);
    await again(place, words);
    expect(namesOf(place)).toEqual(["harbour", "quay"]);
    expect(mapIsRight(place.host)).toBe(true);
    expect(readdirSync(place.host.root).filter((name) => name.startsWith(".new-"))).toEqual([]);
    return isKilled;
  });
  expect(kills).toBeGreaterThan(0);
});

test("removing: the studio is there or put aside, and its data is always somewhere", { timeout: 120_000 }, async () => {
  const kills = await eachKill(STRIDE.short, async (at) => {
    const place = await hostWith("harbour", "quay");
    const isKilled = killed(place, ["remove", "quay"], at);
    const aside = join(place.host.root, "set-aside");
    const there = namesOf(place).includes("quay");
    expect(there).toBe(!existsSync(aside) || readdirSync(aside).length === 0);
    await again(place, ["remove", "quay"]);
    expect(namesOf(place)).toEqual(["harbour"]);
    expect(readdirSync(aside)).toHaveLength(1);
    expect(mapIsRight(place.host)).toBe(true);
    return isKilled;
  });
  expect(kills).toBeGreaterThan(0);
});

/** Whether a program could open it and write. */
function opens(folder: string): boolean {
  const database = databaseIn(folder);
  if (!existsSync(database)) return false;
  try {
    openDatabase(database).close();
    return true;
  } catch {
    return false;
  }
}

test("moving: never two, the old place until the fence, and the same command ends it", {
  timeout: 300_000,
}, async () => {
  const made = await hostWith("harbour");
  const db = openDatabase(databaseIn(folderOf(made.host, "harbour")));
  insertStudio(db, { name: "Tholepin Strength", town: "Port Ellery", soleAuthorMaySign: false, at: 0 });
  db.close();
  const ways = { before: 0, between: 0, after: 0 };
  const kills = await eachKill(STRIDE.move, async (at) => {
    const [a, b] = [await hostWith(), await hostWith()];
    rmSync(a.host.root, { recursive: true });
    cpSync(made.host.root, a.host.root, { recursive: true });
    // What is started there answers as a studio does, for as long as the command asks.
    const answer = `"${process.execPath}" -e 'require("http").createServer((q, r) => r.end("{}")).listen(process.env.PORT); setTimeout(() => process.exit(), 4000)'`;
    const start = `set -a; . "$FOLDER/studio.env"; ${answer} >/dev/null 2>&1 &`;
    const words = ["move", "harbour", "--to", b.host.root, "--stop-here", "true", "--start-here", "true"];
    const isKilled = killed(a, [...words, "--start-there", start], at);
    const [here, there] = [folderOf(a.host, "harbour"), folderOf(b.host, "harbour")];
    const open = [here, there, incomingOf(b.host, "harbour")].filter(opens);
    expect(open.length).toBeLessThanOrEqual(1);
    if (open[0] === here) ways.before++;
    else if (open.length === 0) ways.between++;
    else ways.after++;
    await again(a, [...words, "--start-there", start]);
    expect([opens(here), opens(there)]).toEqual([false, true]);
    expect(mapIsRight(a.host) && mapIsRight(b.host)).toBe(true);
    const asides = readdirSync(join(a.host.root, "set-aside"));
    expect(asides).toHaveLength(1);
    expect(opens(join(a.host.root, "set-aside", asides[0] ?? ""))).toBe(false);
    return isKilled;
  });
  expect(kills).toBeGreaterThan(3);
  console.log(`killed ${kills} times: ${JSON.stringify(ways)}`);
  expect(Math.min(ways.before, ways.after)).toBeGreaterThan(0);
});
