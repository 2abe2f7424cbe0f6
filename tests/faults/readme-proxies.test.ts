/**
 * The proxy blocks of README.md, as an owner copies them out: each is started as it stands, with other ports and without
 * its certificate, and carries a page and a live socket. Where the proxy is not on the machine its settings are read instead.
 */
import { type ChildProcess, spawn, spawnSync } from "node:child_process";
import { existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, expect, test } from "vitest";
import { WebSocket } from "ws";
import { PROXY_SECTION } from "#lib/protocol/address.ts";
import { examine } from "#server/doctor/doctor.ts";
import { MAX_BODY_BYTES } from "#server/http/body.ts";
import { type AddressServer, startAddressServer } from "#tests/support/address-server.ts";
import { freePort, until } from "#tests/support/app.ts";

const README = readFileSync(join(import.meta.dirname, "../../README.md"), "utf8");
const SECTION = README.split(`### ${PROXY_SECTION}\n`)[1]?.split(/\n#{2,3} /)[0] ?? "";
const block = (of: string): string => SECTION.split(`\`\`\`${of}\n`)[1]?.split("```")[0] ?? "";

/** One directive's value, or all after its name. */
const value = (text: string, name: string): string | undefined =>
  new RegExp(`^\\s*${name}\\s+(.*?);?\\s*$`, "mi").exec(text)?.[1];
const seconds = (text = ""): number => {
  const [, amount = "0", unit = "s"] = /^(\d+)(s|m|h)$/.exec(text) ?? [];
  return Number(amount) * { s: 1, m: 60, h: 3600 }[unit as "s" | "m" | "h"];
};
/** The server says something on every open socket at least this often, s; its own beat is much shorter. */
const LEAST_QUIET_S = 60;

test("the nginx block has the settings that the server needs", () => {
  const text = block("nginx");
  expect(value(text, "proxy_http_version")).toBe("1.1");
  expect(value(text, "proxy_set_header Upgrade")).toBe("$http_upgrade");
  expect(value(text, "proxy_set_header Connection")).toBe('"upgrade"');
  expect(value(text, "proxy_set_header Host")).toBe("$http_host");
  // Set, not added to: what a client claims must not come through.
  expect(value(text, "proxy_set_header X-Forwarded-For")).toBe("$remote_addr");
  expect(value(text, "proxy_buffering")).toBe("off");
  expect(seconds(value(text, "proxy_read_timeout"))).toBeGreaterThan(LEAST_QUIET_S);
  expect(Number.parseInt(value(text, "client_max_body_size") ?? "", 10) * 1024 * 1024).toBeGreaterThan(MAX_BODY_BYTES);
});

test("the HAProxy block has the settings that the server needs", () => {
  const text = block("haproxy");
  expect(value(text, "http-request set-header X-Forwarded-For")).toBe("%[src]");
  expect(seconds(value(text, "timeout tunnel"))).toBeGreaterThan(LEAST_QUIET_S);
  expect(text).not.toMatch(/option\s+(http-server-close|httpclose)/);
  expect(value(text, "mode")).toBe("http");
});

test("both blocks hand on to the server's own default port, and the section names the trust setting", () => {
  for (const of of ["nginx", "haproxy"]) expect(block(of)).toContain("127.0.0.1:4310");
  expect(SECTION).toContain("SPRINGLINE_TRUST_PROXY=1");
});

interface Ports {
  readonly front: number;
  readonly back: number;
}
const inside = (text: string, { front, back }: Ports): string =>
  text
    .replace(/listen 443 ssl/, `listen 127.0.0.1:${front}`)
    .replace(/bind :443 ssl crt \S+/, `bind 127.0.0.1:${front}`)
    .replaceAll(":4310", `:${back}`);

function nginxFile(folder: string, ports: Ports): string {
  const server = inside(block("nginx"), ports).replace(/^\s*ssl_.*\n/gm, "");
  const temporary = ["client_body", "proxy", "fastcgi", "uwsgi", "scgi"]
    .map((name) => `${name}_temp_path ${join(folder, name)};`)
    .join("\n");
  return `daemon off; pid ${join(folder, "pid")}; error_log stderr;\nevents {}\nhttp {\naccess_log off;\n${temporary}\n${server}\n}\n`;
}
const haproxyFile = (_folder: string, ports: Ports): string =>
  `global\n  maxconn 100\n${inside(block("haproxy"), ports)}`;

const PROXIES = [
  { name: "nginx", file: nginxFile, run: (conf: string, dir: string) => ["-p", dir, "-c", conf] },
  { name: "haproxy", file: haproxyFile, run: (conf: string) => ["-db", "-f", conf] },
] as const;

/** Debian keeps both where an ordinary account's path does not look. */
const pathOf = (name: string): string | undefined =>
  [...(process.env.PATH ?? "").split(":"), "/usr/sbin", "/usr/local/sbin"]
    .map((dir) => join(dir, name))
    .find((file) => existsSync(file));

const ends: (() => unknown)[] = [];
afterEach(async () => {
  for (const end of ends.splice(0).reverse()) await end();
});

async function running(name: "nginx" | "haproxy", program: string): Promise<{ url: string; server: AddressServer }> {
  const proxy = PROXIES.find((one) => one.name === name);
  if (!proxy) throw new Error(name);
  const folder = mkdtempSync(join(tmpdir(), "springline-proxy-"));
  ends.push(() => rmSync(folder, { recursive: true, force: true }));
  mkdirSync(join(folder, "logs"));
  const front = await freePort();
  const url = `http://localhost:${front}`;
  const server = await startAddressServer({ origin: url, trustProxy: true });
  ends.push(() => server.stop());
  const conf = join(folder, "conf");
  writeFileSync(conf, proxy.file(folder, { front, back: server.port }));
  const child: ChildProcess = spawn(program, proxy.run(conf, folder), { stdio: ["ignore", "ignore", "pipe"] });
  const said: string[] = [];
  child.stderr?.on("data", (data: Buffer) => said.push(data.toString()));
  ends.push(async () => {
    const gone = new Promise((done) => child.once("exit", done));
    if (child.exitCode === null && child.kill("SIGTERM")) await gone;
  });
  await until(async () => {
    if (child.exitCode !== null) throw new Error(`${name} ended by itself: ${said.join("")}`);
    return fetch(`${url}/api/health`).then(
      (answer) => answer.ok,
      () => false,
    );
  }, 15_000);
  return { url, server };
}

test.each(["nginx", "haproxy"] as const)("%s started with its block carries a page and a live socket", async (name) => {
  const program = pathOf(name);
  if (program === undefined) {
    console.log(`${name} is not on this machine: only the settings in its block were read.`);
    return;
  }
  expect(spawnSync(program, ["-v"]).status).toBe(0);
  const { url, server } = await running(name, program);
  expect(await (await fetch(`${url}/sign-in`)).text()).toBe("a page");
  const ws = new WebSocket(`${url.replace("http", "ws")}/sync/plan/x`, { headers: { origin: url } });
  const code = await new Promise((done, fail) => ws.once("close", done).once("error", fail));
  // It was opened, and the server itself said why it ends: nobody is signed in.
  expect(code).toBe(4401);
  const { secret, dataDir } = server.studio.app.env;
  const findings = await examine({ SPRINGLINE_URL: url, SPRINGLINE_SECRET: secret, SPRINGLINE_DATA: dataDir });
  expect(findings.filter(({ is }) => is === "wrong")).toEqual([]);
  expect(findings.find(({ what }) => what === "proxy")?.found).toContain("names its clients and is trusted");
});
