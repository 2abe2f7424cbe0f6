/** The doctor on studios that are set up wrong, each in one way: it names that one, says what to do, and changes nothing. */
import { spawn } from "node:child_process";
import { chmodSync, closeSync, existsSync, mkdtempSync, openSync, readFileSync, rmSync, writeSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, expect, test } from "vitest";
import { openDatabase } from "#db/connection.ts";
import { acquireWriterLock } from "#db/file/writer-lock.ts";
import { DEMO_SECRET } from "#server/base/env.ts";
import { examine } from "#server/doctor/doctor.ts";
import type { Diagnosis } from "#server/doctor/finding.ts";
import { createSigningKeys } from "#server/signing/keys.ts";
import { type AddressServer, type AddressSetup, startAddressServer } from "#tests/support/address-server.ts";
import { type PlainProxy, type ProxySetup, plainProxy } from "#tests/support/plain-proxy.ts";

const ROOT = join(import.meta.dirname, "../..");
let server: AddressServer | undefined;
let proxy: PlainProxy | undefined;
const folders: string[] = [];
afterEach(async () => {
  await proxy?.stop();
  await server?.stop();
  [server, proxy] = [undefined, undefined];
  for (const folder of folders.splice(0)) rmSync(folder, { recursive: true, force: true });
});

/** A server behind a proxy whose address is the public one, and the settings that the doctor is run with. */
async function behind(how: Partial<ProxySetup>, set: Partial<AddressSetup> = {}): Promise<Record<string, string>> {
  proxy = await plainProxy({ to: () => server?.port ?? 1, upgrades: true, ...how });
  server = await startAddressServer({ origin: proxy.url, ...set });
  return {
    SPRINGLINE_URL: proxy.url,
    SPRINGLINE_SECRET: server.studio.app.env.secret,
    SPRINGLINE_DATA: server.studio.app.env.dataDir,
  };
}
const naming = (headers: Record<string, unknown>) => ({ ...headers, "x-forwarded-for": "198.51.100.4" }) as never;

const wrongOnes = (findings: readonly Diagnosis[]) =>
  findings.filter(({ is }) => is === "wrong").map(({ what }) => what);
const about = (findings: readonly Diagnosis[], what: string) => findings.find((one) => one.what === what);

test("a studio that is set up well: nothing is wrong, and what the clock could not be compared with is said", async () => {
  const findings = await examine(await behind({ headers: naming }, { trustProxy: true }));
  expect(wrongOnes(findings)).toEqual([]);
  expect(about(findings, "proxy")?.found).toContain("198.51.100.4");
  expect(about(findings, "live connections")?.is).toBe("right");
  expect(about(findings, "clock")).toMatchObject({ is: "unsure", found: expect.stringContaining("this machine") });
});

test("a proxy that does not carry upgrades: live connections are wrong, and the README's section is named", async () => {
  const findings = await examine(await behind({ upgrades: false }));
  expect(wrongOnes(findings)).toEqual(["live connections"]);
  expect(about(findings, "live connections")?.found).toContain("status 426 instead of 101");
  expect(about(findings, "live connections")?.todo).toContain("Behind a proxy");
});

test.each([
  ["carries upgrades", true, "status 403"],
  ["hands them on as requests", "as requests", "status 307"],
] as const)(
  "a server started with another address, behind a proxy that %s: that is named, not the proxy",
  async (_what, upgrades, status) => {
    const set = await behind({ upgrades }, { origin: "http://localhost:9" });
    const findings = await examine(set);
    expect(wrongOnes(findings)).toEqual(["leads here", "live connections"]);
    const live = about(findings, "live connections");
    expect(live?.found).toContain(status);
    expect(live?.found).toContain("because it was started with http://localhost:9.");
    expect(live?.todo).toBe(`Restart it with SPRINGLINE_URL=${set.SPRINGLINE_URL}, then run the doctor again.`);
  },
);

test("a proxy that changes the Host and carries no upgrades: the server's own sending on is named", async () => {
  const headers = (all: Record<string, unknown>) => ({ ...all, host: "127.0.0.1:4310" }) as never;
  const findings = await examine(await behind({ upgrades: "as requests", headers }));
  expect(about(findings, "live connections")?.found).toContain("(status 307): the proxy sends another Host");
  expect(about(findings, "live connections")?.todo).toContain(
    "pass the Host header and WebSocket upgrades on unchanged",
  );
});

test("a proxy that changes the origin is told from one that carries nothing", async () => {
  const headers = (all: Record<string, unknown>) =>
    ({ ...all, ...(all.origin ? { origin: "http://inner" } : {}) }) as never;
  const findings = await examine(await behind({ headers }));
  expect(about(findings, "live connections")?.found).toContain("the proxy changes the page's origin");
});

test("forwarded-for arrives and is not trusted", async () => {
  const findings = await examine(await behind({ headers: naming }));
  expect(wrongOnes(findings)).toEqual(["proxy"]);
  expect(about(findings, "proxy")?.todo).toContain("SPRINGLINE_TRUST_PROXY=1");
});

test("trusted, and no proxy sets it: anybody could claim any address", async () => {
  const findings = await examine(await behind({}, { trustProxy: true }));
  expect(wrongOnes(findings)).toEqual(["proxy"]);
  expect(about(findings, "proxy")?.found).toContain("invented x-forwarded-for was accepted");
});

test("the address leads to another Springline, or to this one with another address set", async () => {
  const vars = await behind({});
  const other = { ...vars, SPRINGLINE_SECRET: "another secret of another studio, long enough" };
  expect(about(await examine(other), "leads here")?.found).toContain("another secret");
  const renamed = { ...vars, SPRINGLINE_URL: vars.SPRINGLINE_URL?.replace("localhost", "127.0.0.1") };
  expect(about(await examine(renamed), "leads here")?.found).toContain(`was started with SPRINGLINE_URL=${proxy?.url}`);
});

test.each([
  ["https//plans", "not an address"],
  ["http://plans.quay.invalid", "not encrypted"],
  ["https://plans.quay.invalid/studio", "set SPRINGLINE_URL to https://plans.quay.invalid"],
])("the address %s is told", async (url, words) => {
  const findings = await examine({ SPRINGLINE_URL: url, SPRINGLINE_DATA: freshFolder() });
  expect(`${about(findings, "public address")?.found} ${about(findings, "public address")?.todo}`).toContain(words);
  expect(about(findings, "public address")?.is).toBe("wrong");
});

function freshFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), "springline-doctor-"));
  folders.push(folder);
  return folder;
}

interface Said {
  readonly code: number | null;
  readonly out: string;
  readonly err: string;
}
function command(vars: Record<string, string>, ...args: string[]): Promise<Said> {
  const env = { ...process.env, SPRINGLINE_SECRET: undefined, SPRINGLINE_URL: undefined, ...vars };
  const child = spawn(process.execPath, ["server/cli/command.mjs", "doctor", ...args], { cwd: ROOT, env });
  let [out, err] = ["", ""];
  child.stdout.on("data", (chunk: Buffer) => {
    out += chunk.toString();
  });
  child.stderr.on("data", (chunk: Buffer) => {
    err += chunk.toString();
  });
  return new Promise((done) => child.once("close", (code) => done({ code, out, err })));
}

let data: string;
beforeEach(() => {
  data = join(freshFolder(), "data");
});

test("with the server stopped: exit 0, one line a check, and which checks need it running; nothing is made", async () => {
  const said = await command({ SPRINGLINE_DATA: data, PORT: "1" });
  expect(said).toMatchObject({ code: 0, err: "" });
  expect(said.out.trimEnd().split("\n")).toHaveLength(16);
  for (const check of ["leads here", "live connections", "proxy", "clock"])
    expect(said.out).toMatch(new RegExp(`^\\? +${check} .*running`, "m"));
  expect(existsSync(data)).toBe(false);
});

test("a database with overwritten pages: exit 1, and the way back to the backup", async () => {
  const file = join(data, "springline.sqlite");
  openDatabase(file).close();
  const handle = openSync(file, "r+");
  writeSync(handle, Buffer.alloc(8192, 0x5a), 0, 8192, 8192);
  closeSync(handle);
  const findings = await examine({ SPRINGLINE_DATA: data, PORT: "1" });
  expect(about(findings, "database")).toMatchObject({
    is: "wrong",
    todo: expect.stringContaining("npm run -s restore"),
  });
});

test("files that others may read: exit 1 and the command that puts it right", async () => {
  openDatabase(join(data, "springline.sqlite")).close();
  chmodSync(join(data, "springline.sqlite"), 0o644);
  const before = readFileSync(join(data, "springline.sqlite"));
  const said = await command({ SPRINGLINE_DATA: data, PORT: "1" });
  expect(said.code).toBe(1);
  expect(said.out).toMatch(/^WRONG +secrets .*chmod 600 \S+springline\.sqlite$/m);
  expect(said.out).toMatch(/^ok +database +undamaged/m);
  expect(readFileSync(join(data, "springline.sqlite")).equals(before)).toBe(true);
});

/** A studio that has signed with a key made under `secret`. */
function signedWith(secret: string, folder = data): void {
  const db = openDatabase(join(folder, "springline.sqlite"));
  expect(createSigningKeys({ db, secret, now: () => 1 }).keyId).toMatch(/^[0-9a-f]{16}$/);
  db.close();
}
const OWN = "the secret of this studio, and long enough to be one";

test("the invented studio's folder: its public secret is known, its own server recognised, and no backup is missed", async () => {
  const vars = await behind({}, { secret: DEMO_SECRET });
  signedWith(DEMO_SECRET);
  const findings = await examine({ ...vars, SPRINGLINE_DATA: data, SPRINGLINE_SECRET: undefined });
  expect(wrongOnes(findings)).toEqual([]);
  expect(about(findings, "studio")?.found).toContain("the invented one of npm run demo");
  for (const what of ["leads here", "backups", "service"]) expect(about(findings, what)?.is, what).toBe("right");
  expect(about(findings, "backups")?.found).toContain("nobody needs one");
});

test("a real studio without its secret, or with another one: nobody could sign, and that is said", async () => {
  signedWith(OWN);
  const run = (secret?: string) => examine({ SPRINGLINE_DATA: data, PORT: "1", SPRINGLINE_SECRET: secret });
  expect(about(await run(OWN), "studio")?.is).toBe("right");
  expect(about(await run(), "studio")).toMatchObject({ is: "wrong", found: expect.stringContaining("is missing") });
  const other = about(await run(`${OWN} of old`), "studio");
  expect(other).toMatchObject({ is: "wrong", todo: expect.stringContaining("npm run -s restore") });
});

test("a server that runs at another port than the settings say is not looked for behind a proxy", async () => {
  const file = join(data, "springline.sqlite");
  openDatabase(file).close();
  const lock = acquireWriterLock(file);
  const leads = about(await examine({ SPRINGLINE_DATA: data, PORT: "1" }), "leads here");
  lock.release();
  expect(leads).toMatchObject({
    is: "wrong",
    found: expect.stringContaining("running, but not at http://localhost:1"),
  });
  expect(leads?.todo).toContain("the settings that the server was started with");
});

test("--help says what it does; another word is refused in a sentence", async () => {
  expect(await command({}, "--help")).toMatchObject({ code: 0, out: expect.stringContaining("changes nothing") });
  expect(await command({}, "--all")).toMatchObject({ code: 1, err: expect.stringContaining("--help"), out: "" });
});
