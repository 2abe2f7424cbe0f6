/** Hosts with studios that really run, each with its own HAProxy, started from the file in `server/run`. */
import { type ChildProcess, spawn } from "node:child_process";
import { existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { addStudio } from "#server/host/add-studio.ts";
import type { StudioMove } from "#server/host/arrive.ts";
import { type HostFolder, openHost } from "#server/host/host-folder.ts";
import { freePort, until } from "./app.ts";
import { bundleServer, ROOT } from "./bundle-server.ts";
import { selfSigned } from "./self-signed.ts";

export const HAPROXY_FILE = readFileSync(join(ROOT, "server/run/haproxy-studios.cfg"), "utf8");

export interface TestHostFolder {
  readonly host: HostFolder;
  readonly folder: string;
  /** Where its proxy takes connections, once it is started. */
  readonly front: number;
  remove(): void;
}

/** A folder for studios with ports of its own. */
export async function testHost(): Promise<TestHostFolder> {
  const folder = mkdtempSync(join(tmpdir(), "springline-host-"));
  const root = join(folder, "studios");
  mkdirSync(root);
  const first = await freePort();
  const settings = { ports: [first, Math.min(65_535, first + 40)], proxySocket: join(folder, "admin.sock") };
  writeFileSync(join(root, "host.json"), JSON.stringify(settings));
  const remove = () => rmSync(folder, { recursive: true, force: true });
  return { host: openHost(root), folder, front: await freePort(), remove };
}

/** HAProxy's file with this host's places. */
export function haproxyFor({ host, folder, front }: TestHostFolder): string {
  const { key, cert } = selfSigned();
  mkdirSync(join(folder, "certificates"), { recursive: true });
  writeFileSync(join(folder, "certificates", "one.pem"), `${cert}${key}`);
  const text = HAPROXY_FILE.replace("/etc/ssl/springline-studios/", `${folder}/certificates/`)
    .replace(/\/var\/lib\/springline-studios\//g, `${host.root}/`)
    .replace(/stats socket \S+ user root group root/, `stats socket ${host.settings.proxySocket}`)
    // Another account may be changed to by the superuser alone.
    .replace(/^ {2}(user|group) haproxy\n/gm, "")
    .replace("bind :443", `bind 127.0.0.1:${front}`);
  const file = join(folder, "haproxy.cfg");
  writeFileSync(file, text);
  return file;
}

/** Resolves with what ends it, once it listens. The host's map must be there. */
export async function startProxy(program: string, place: TestHostFolder): Promise<() => Promise<void>> {
  const child: ChildProcess = spawn(program, ["-db", "-f", haproxyFor(place)], { stdio: ["ignore", "ignore", "pipe"] });
  let said = "";
  child.stderr?.on("data", (data: Buffer) => {
    said += data.toString();
  });
  await until(() => {
    if (child.exitCode !== null) throw new Error(`HAProxy ended by itself: ${said}`);
    return existsSync(place.host.settings.proxySocket);
  }, 15_000);
  return async () => {
    const gone = new Promise((done) => child.once("exit", done));
    if (child.exitCode === null && child.kill("SIGKILL")) await gone;
  };
}

const OUT = "dist-tests/host";

/** Bundles the studio's program; the lines of shell that stop and start it wherever it is, and what ends all that run. */
export async function studioLines(): Promise<{ readonly lines: StudioMove["lines"]; endAll(): void }> {
  const out = join(ROOT, OUT);
  await bundleServer({ "host-server": "tests/support/host-server.ts" }, out, "external");
  const pids = mkdtempSync(join(tmpdir(), "springline-pids-"));
  const program = `"${process.execPath}" "${join(out, "host-server.js")}"`;
  const start = `set -a; . "$FOLDER/studio.env"; cd "${ROOT}"; ${program} >>"$FOLDER/log" 2>&1 & echo $! >>"${pids}/$STUDIO"`;
  const stop = `test ! -s "${pids}/$STUDIO" || { kill $(tail -n 1 "${pids}/$STUDIO"); : >"${pids}/$STUDIO"; }`;
  return {
    lines: { stopHere: stop, startHere: start, startThere: start },
    endAll() {
      spawnKill(pids);
      rmSync(pids, { recursive: true, force: true });
    },
  };
}

function spawnKill(pids: string): void {
  const file = join(pids, "harbour");
  if (!existsSync(file)) return;
  for (const pid of readFileSync(file, "utf8").trim().split("\n").filter(Boolean)) {
    try {
      process.kill(Number(pid), "SIGKILL");
    } catch {
      // It has ended.
    }
  }
}

/** Adds the studio that these tests move. Its host name is one that leads to this machine. */
export const addHarbour = ({ host, front }: TestHostFolder) => addStudio(host, "harbour", `https://localhost:${front}`);
