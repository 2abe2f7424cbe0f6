/** The unit file for systemd in `server/run`: systemd itself reads it, and what it bounds agrees with what the program does. */
import { spawnSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, expect, test } from "vitest";
import { readEnv, readStudiosFolder } from "#server/base/env.ts";

const ROOT = join(import.meta.dirname, "../..");
const RUN = join(ROOT, "server/run");
const UNIT = readFileSync(join(RUN, "springline.service"), "utf8");
const README = readFileSync(join(ROOT, "README.md"), "utf8");
const value = (name: string, unit = UNIT): string | undefined => new RegExp(`^${name}=(.*)$`, "m").exec(unit)?.[1];
/** Of one of many studios on a host. */
const TEMPLATE = readFileSync(join(RUN, "springline@.service"), "utf8");

const folders: string[] = [];
afterEach(() => {
  for (const folder of folders.splice(0)) rmSync(folder, { recursive: true, force: true });
});

/** A unit with this machine's Node, since systemd looks whether the program is there. */
function unitHere(name = "springline.service", unit = UNIT): string {
  const folder = mkdtempSync(join(tmpdir(), "springline-unit-"));
  folders.push(folder);
  const file = join(folder, name);
  writeFileSync(file, unit.replace("/usr/bin/node", process.execPath));
  return file;
}
const hasSystemd = spawnSync("systemd-analyze", ["--version"]).status === 0;
if (!hasSystemd) console.log("systemd-analyze is not on this machine: the unit file is read by this test alone.");

test("README.md shows the unit and its settings as they stand in server/run", () => {
  expect(README).toContain(`\`\`\`ini\n${UNIT}\`\`\``);
  expect(README).toContain(`\`\`\`sh\n${readFileSync(join(RUN, "springline.env"), "utf8")}\`\`\``);
});

const UNITS = [
  ["springline.service", UNIT],
  ["springline@harbour.service", TEMPLATE],
] as const;

test.skipIf(!hasSystemd).each(UNITS)("systemd finds nothing wrong with %s", (name, unit) => {
  const { status, stdout, stderr } = spawnSync("systemd-analyze", ["verify", unitHere(name, unit)], {
    encoding: "utf8",
  });
  expect([status, stdout, stderr]).toEqual([0, "", ""]);
});

test.skipIf(!hasSystemd).each(UNITS)("systemd counts %s among the services that are well shut in", (name, unit) => {
  const args = ["security", "--offline=true", "--no-pager", unitHere(name, unit)];
  const { stdout } = spawnSync("systemd-analyze", args, { encoding: "utf8" });
  const exposure = Number(/Overall exposure level for \S+: ([\d.]+)/.exec(stdout)?.[1]);
  // Its scale goes from 0 to 10; what may open any network socket does not come below 1.
  expect(exposure).toBeLessThan(2);
});

test("it waits longer for a stop than the program takes at most, and starts it again only after a fault", () => {
  const bound = /const STOP_BOUND_MS = ([\d_]+);/.exec(readFileSync(join(ROOT, "server/main.ts"), "utf8"))?.[1];
  expect(Number(value("TimeoutStopSec")) * 1000).toBeGreaterThan(Number(bound?.replace("_", "")));
  expect(value("Restart")).toBe("on-failure");
  expect(value("NoNewPrivileges")).toBe("yes");
  expect(value("ProtectSystem")).toBe("strict");
});

test("one of many studios is run as a single one is, but for its own folder and what it may take", () => {
  const own = /^(#|Description|EnvironmentFile|StateDirectory|TemporaryFileSystem|BindPaths|ReadWritePaths|MemoryMax)/;
  const lines = (unit: string) => unit.split("\n").filter((line) => line !== "" && !own.test(line));
  expect(lines(TEMPLATE)).toEqual(lines(UNIT));
  const folder = `${readStudiosFolder({})}/%i`;
  expect(value("EnvironmentFile", TEMPLATE)).toBe(`${folder}/studio.env`);
  expect([value("BindPaths", TEMPLATE), value("ReadWritePaths", TEMPLATE)]).toEqual([folder, folder]);
  expect(value("TemporaryFileSystem", TEMPLATE)).toBe(`${readStudiosFolder({})}:ro`);
  for (const name of ["springline@.service", "haproxy-studios.cfg"]) expect(README).toContain(`server/run/${name}`);
});

test("its settings are those that the program reads, and its data is in the folder that systemd makes", () => {
  const lines = readFileSync(join(RUN, "springline.env"), "utf8").trim().split("\n");
  const vars = Object.fromEntries(lines.map((line) => line.split("=") as [string, string]));
  expect(vars.SPRINGLINE_DATA).toBe(`/var/lib/${value("StateDirectory")}`);
  const folder = mkdtempSync(join(tmpdir(), "springline-unit-"));
  folders.push(folder);
  const env = readEnv("live", { ...vars, SPRINGLINE_DATA: folder });
  expect(env).toMatchObject({ origin: "https://plans.example.org", trustProxy: true, port: 4310, accessLog: false });
});
