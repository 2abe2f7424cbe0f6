/**
 * The proxy blocks of README.md, as an owner copies them out of `server/run`: each is started as it stands, with other ports and a
 * self-signed certificate, and carries what people do. Where the proxy is not on the machine its settings are read instead.
 */
import { type ChildProcess, spawn, spawnSync } from "node:child_process";
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, afterEach, beforeAll, describe, expect, test } from "vitest";
import { GET as address } from "#app/api/address/route.ts";
import { POST as signIn } from "#app/api/auth/[...all]/route.ts";
import { GET as health } from "#app/api/health/route.ts";
import { POST as importPlan } from "#app/api/plans/import/route.ts";
import { PROXY_SECTION } from "#lib/protocol/address.ts";
import { setSpringline } from "#server/context/springline.ts";
import { loadDoc } from "#server/doc-log/stored-doc.ts";
import { examine } from "#server/doctor/doctor.ts";
import { MAX_BODY_BYTES } from "#server/http/body.ts";
import { attachSync } from "#server/sync/attach.ts";
import { freePort, until } from "#tests/support/app.ts";
import { eventually } from "#tests/support/eventually.ts";
import { pathOf } from "#tests/support/on-path.ts";
import { PausedWriter } from "#tests/support/paused-writer.ts";
import { openStudio, type PlanStudio } from "#tests/support/plan-studio.ts";
import { RawClient } from "#tests/support/raw-client.ts";
import { startRoutes } from "#tests/support/route-server.ts";
import { selfSigned } from "#tests/support/self-signed.ts";
import { PASSWORD, signInAll } from "#tests/support/sign-in.ts";
import { stopped, stopServers } from "#tests/support/stopped-server.ts";
import { SMALL_PLAN } from "#tests/support/sync-server.ts";
import { tempDb } from "#tests/support/temp-db.ts";

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

const RUN = join(import.meta.dirname, "../../server/run");
test.each([
  ["nginx", "nginx.conf"],
  ["haproxy", "haproxy.cfg"],
])("README.md shows the %s block as it stands in server/run", (of, file) => {
  expect(block(of)).toBe(readFileSync(join(RUN, file), "utf8"));
});

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
/** Shorter than an hour's quiet by so much that a test can wait for it: a socket that is open lives by another limit. */
const SHORT = "2s";
const inside = (text: string, { front, back }: Ports, cert: string): string =>
  text
    .replace(/listen 443 ssl/, `listen 127.0.0.1:${front} ssl`)
    .replace(/bind :443 ssl crt \S+/, `bind 127.0.0.1:${front} ssl crt ${cert}.both`)
    .replace(/(ssl_certificate) \S+;/, `$1 ${cert}.pem;`)
    .replace(/(ssl_certificate_key) \S+;/, `$1 ${cert}.key;`)
    .replace(/timeout (client|server) 1m/g, `timeout $1 ${SHORT}`)
    .replaceAll(":4310", `:${back}`);

function nginxFile(folder: string, ports: Ports): string {
  const server = inside(block("nginx"), ports, join(folder, "cert"));
  const temporary = ["client_body", "proxy", "fastcgi", "uwsgi", "scgi"]
    .map((name) => `${name}_temp_path ${join(folder, name)};`)
    .join("\n");
  const limits = `keepalive_timeout ${SHORT}; client_header_timeout ${SHORT}; send_timeout ${SHORT};`;
  // Started by root, it would write large bodies as another account, which may not use this folder.
  const user = process.getuid?.() === 0 ? "user root;" : "";
  return `${user} daemon off; pid ${join(folder, "pid")}; error_log stderr;\nevents {}\nhttp {\naccess_log off; ${limits}\n${temporary}\n${server}\n}\n`;
}
const haproxyFile = (folder: string, ports: Ports): string =>
  `global\n  maxconn 100\n${inside(block("haproxy"), ports, join(folder, "cert"))}`;

const PROXIES = {
  nginx: { file: nginxFile, run: (conf: string, dir: string) => ["-p", dir, "-c", conf] },
  haproxy: { file: haproxyFile, run: (conf: string) => ["-db", "-f", conf] },
} as const;
type ProxyName = keyof typeof PROXIES;

const ends: (() => unknown)[] = [];
afterEach(async () => {
  for (const end of ends.splice(0).reverse()) await end();
});

/** Starts the proxy in front of `back`; resolves once it answers. */
async function proxied(name: ProxyName, program: string, { front, back }: Ports): Promise<void> {
  const folder = mkdtempSync(join(tmpdir(), "springline-proxy-"));
  ends.push(() => rmSync(folder, { recursive: true, force: true }));
  mkdirSync(join(folder, "logs"));
  const { key, cert } = selfSigned();
  writeFileSync(join(folder, "cert.pem"), cert);
  writeFileSync(join(folder, "cert.key"), key);
  writeFileSync(join(folder, "cert.both"), `${cert}${key}`);
  const conf = join(folder, "conf");
  writeFileSync(conf, PROXIES[name].file(folder, { front, back }));
  const child: ChildProcess = spawn(program, PROXIES[name].run(conf, folder), { stdio: ["ignore", "ignore", "pipe"] });
  const said: string[] = [];
  child.stderr?.on("data", (data: Buffer) => said.push(data.toString()));
  ends.push(async () => {
    const gone = new Promise((done) => child.once("exit", done));
    if (child.exitCode === null && child.kill("SIGTERM")) await gone;
  });
  await until(async () => {
    if (child.exitCode !== null) throw new Error(`${name} ended by itself: ${said.join("")}`);
    return fetch(`https://localhost:${front}/api/health`).then(
      ({ status }) => status < 500,
      () => false,
    );
  }, 15_000);
}

/** A studio behind the proxy, with the routes that the test uses, real sign-in and real sockets. */
async function studioBehind(name: ProxyName, program: string): Promise<{ url: string; studio: PlanStudio }> {
  const [front, back] = [await freePort(), await freePort()];
  const url = `https://localhost:${front}`;
  const studio = openStudio({ clock: Date.now(), env: { origin: url, trustProxy: true } });
  setSpringline(studio.app);
  const door = attachSync({ rooms: studio.rooms, isOriginAllowed: (from) => from === url });
  const { serving } = await startRoutes({
    ...{ env: { mode: "live", origin: url, trustProxy: true }, port: back, upgrade: door.handleUpgrade },
    routes: {
      "GET /api/health": health,
      "GET /api/address": address,
      "GET /sign-in": () => new Response("a page"),
      "POST /api/auth/sign-in/email": signIn,
      "POST /api/plans/import": importPlan,
    },
  });
  ends.push(async () => {
    door.detach();
    await serving.close(0);
    setSpringline(undefined);
    await studio.stop();
  });
  await proxied(name, program, { front, back });
  return { url, studio };
}

/** Its own certificate is trusted by nobody else. */
let strict: string | undefined;
beforeAll(() => {
  strict = process.env.NODE_TLS_REJECT_UNAUTHORIZED;
  process.env.NODE_TLS_REJECT_UNAUTHORIZED = "0";
});
afterAll(() => {
  if (strict === undefined) delete process.env.NODE_TLS_REJECT_UNAUTHORIZED;
  else process.env.NODE_TLS_REJECT_UNAUTHORIZED = strict;
});

describe.each(["nginx", "haproxy"] as const)("%s started with its block", (name) => {
  const program = pathOf(name);
  if (program === undefined) console.log(`${name} is not on this machine: only the settings in its block are read.`);

  test.skipIf(program === undefined)(
    "carries sign-in, edits over a socket that stays open while it is quiet, the client's address, and bounds uploads",
    { timeout: 60_000 },
    async () => {
      expect(spawnSync(program ?? "", ["-v"]).status).toBe(0);
      const { url, studio } = await studioBehind(name, program ?? "");
      expect(await (await fetch(`${url}/sign-in`)).text()).toBe("a page");
      await signInAll(studio, []);
      const cookie = await signedIn(url, "marta");
      expect(cookie).toContain("__Secure-");
      const made = await post(`${url}/api/plans/import`, cookie, JSON.stringify(SMALL_PLAN));
      expect(made.status).toBe(201);
      const { id } = (await made.json()) as { id: string };
      const open = () =>
        new RawClient(url.replace("http", "ws"), { kind: "plan", key: id }, { cookies: cookie, origin: url }).synced();
      const [one, other] = [await open(), await open()];
      one.edit((doc) => doc.getMap("words").set("first", true));
      await one.saved();
      await eventually("the other has it", () => other.doc.getMap("words").has("first"));
      await new Promise((done) => setTimeout(done, 5000));
      expect([one.closeCode, other.closeCode]).toEqual([undefined, undefined]);
      other.edit((doc) => doc.getMap("words").set("after a pause", true));
      await eventually("the one has it", () => one.doc.getMap("words").has("after a pause"));
      for (const client of [one, other]) client.end();

      // Between the server's bound and the proxy's the sentence is the server's; above, somebody's 413.
      const large = await post(`${url}/api/plans/import`, cookie, "x".repeat(MAX_BODY_BYTES + 1));
      expect([large.status, await large.text()]).toEqual([413, expect.stringContaining("5 MB is the limit")]);
      const huge = await post(`${url}/api/plans/import`, cookie, "x".repeat(9 * 1024 * 1024));
      expect(huge.status).toBe(413);

      const { secret, dataDir } = studio.app.env;
      const findings = await examine({ SPRINGLINE_URL: url, SPRINGLINE_SECRET: secret, SPRINGLINE_DATA: dataDir });
      expect(findings.filter(({ is }) => is === "wrong")).toEqual([]);
      // It also asks with an invented x-forwarded-for, which does not come through.
      expect(findings.find(({ what }) => what === "proxy")?.found).toContain("this machine counts as 127.0.0.1");
    },
  );

  test.skipIf(program === undefined)("a restart of the server is a short pause", { timeout: 90_000 }, async () => {
    const servers = await stopServers(`proxied-${name}`);
    ends.push(() => servers.end());
    const temp = tempDb();
    ends.push(() => temp.remove());
    const [front, back] = [await freePort(), await freePort()];
    let child = await servers.start(temp.file, back);
    await proxied(name, program ?? "", { front, back });
    const writer = new PausedWriter({ origin: `wss://localhost:${front}`, plan: "p", userId: "marta" });
    ends.push(() => writer.end());
    await eventually("something is saved", () => writer.longestPause > 0, 15_000);
    writer.beginMeasuring();
    expect((await stopped(child)).code).toBe(0);
    child = await servers.start(temp.file, back);
    await eventually("it has come back", () => writer.codes.length > 0 && writer.longestPause > 300, 30_000);
    expect(writer.toldToWait).toBe(true);
    writer.rest();
    await eventually("all is saved", () => writer.isSaved, 15_000);
    console.log(`behind ${name}: a pause of ${Math.round(writer.longestPause)} ms`);
    await stopped(child);
    const db = temp.open({ readOnly: true });
    const silent = () => undefined;
    const stored = loadDoc(db, "plan/p", { info: silent, warn: silent, error: silent })?.doc.getMap("words");
    expect(writer.words.filter((word) => stored?.has(word) !== true)).toEqual([]);
    db.close();
  });
});

const post = (url: string, cookie: string, body: string) => {
  const { origin } = new URL(url);
  return fetch(url, { method: "POST", body, headers: { "content-type": "application/json", cookie, origin } });
};

/** The Cookie header of a person who has signed in through the proxy. */
async function signedIn(url: string, who: string): Promise<string> {
  const body = JSON.stringify({ email: `${who}@tholepin.example`, password: PASSWORD });
  const answer = await post(`${url}/api/auth/sign-in/email`, "", body);
  expect(answer.status).toBe(200);
  return answer.headers
    .getSetCookie()
    .map((one) => one.split(";")[0])
    .join("; ");
}
