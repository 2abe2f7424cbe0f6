/** Studios of a host behind a real HAProxy, started from its file in `server/run`: who is led where, and what changes while it runs. */
import { spawnSync } from "node:child_process";
import {
  appendFileSync,
  chownSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  statSync,
  symlinkSync,
  writeFileSync,
} from "node:fs";
import { createServer } from "node:http";
import { Agent, request } from "node:https";
import { join } from "node:path";
import { afterEach, expect, test } from "vitest";
import { WebSocket, WebSocketServer } from "ws";
import { openDatabase } from "#db/connection.ts";
import { acquireWriterLock } from "#db/file/writer-lock.ts";
import { addStudio } from "#server/host/add-studio.ts";
import { databaseIn, folderOf, openHost, studiosOf } from "#server/host/host-folder.ts";
import { listStudios } from "#server/host/list-studios.ts";
import { moveStudio } from "#server/host/move-studio.ts";
import { removeStudio } from "#server/host/remove-studio.ts";
import { bundleServer, ROOT } from "#tests/support/bundle-server.ts";
import { eventually } from "#tests/support/eventually.ts";
import { haproxyFor, startProxy, type TestHostFolder, testHost } from "#tests/support/host-rig.ts";
import { pathOf } from "#tests/support/on-path.ts";

const haproxy = pathOf("haproxy");
if (haproxy === undefined) console.log("haproxy is not on this machine: the map is looked at, not led by.");
const AT = new Date(Date.UTC(2026, 10, 30, 12));

const ends: (() => unknown)[] = [];
afterEach(async () => {
  for (const end of ends.splice(0).reverse()) await end();
});

async function newHost(): Promise<TestHostFolder> {
  const place = await testHost();
  ends.push(place.remove);
  return place;
}
const mapOf = ({ host }: TestHostFolder) => readFileSync(join(host.root, "hosts.map"), "utf8");

test("studios added at once each get a port of their own; what is asked again changes nothing", async () => {
  const place = await newHost();
  const names = ["quay", "harbour", "loft", "mole"];
  const added = await Promise.all(names.map((name) => addStudio(place.host, name, `https://${name}.example.org`)));
  expect(new Set(added.map(({ studio }) => studio.env.port)).size).toBe(4);
  const before = mapOf(place);
  expect(before.trim().split("\n")).toHaveLength(4);
  const again = await addStudio(place.host, "quay", "https://quay.example.org");
  expect([again.before, again.studio.env]).toEqual([true, added[0]?.studio.env]);
  expect(mapOf(place)).toBe(before);
  expect(again.proxy).toContain("systemctl reload haproxy");
  await expect(addStudio(place.host, "quay", "https://other.example.org")).rejects.toThrow(/studio quay already/);
  await expect(addStudio(place.host, "pier", "https://Quay.example.org")).rejects.toThrow(/address of the studio quay/);
  expect(studiosOf(place.host).map(({ name }) => name)).toEqual([...names].sort());
});

test("one that runs is not removed; one that is removed is put aside whole, twice or once", async () => {
  const place = await newHost();
  await addStudio(place.host, "quay", "https://quay.example.org");
  const database = databaseIn(folderOf(place.host, "quay"));
  const lock = acquireWriterLock(database);
  await expect(removeStudio(place.host, "quay", AT)).rejects.toThrow(/is running. Stop it first/);
  lock.release();
  writeFileSync(database, "all of it");
  const { aside } = await removeStudio(place.host, "quay", AT);
  expect(readFileSync(databaseIn(aside ?? ""), "utf8")).toBe("all of it");
  expect(mapOf(place)).toBe("");
  expect((await removeStudio(place.host, "quay", AT)).aside).toBe(aside);
  await expect(removeStudio(place.host, "pier", AT)).rejects.toThrow(/no studio pier/);
  // Its name is free again, and a second one put aside in the same second has a folder of its own.
  await addStudio(place.host, "quay", "https://quay.example.org");
  expect((await removeStudio(place.host, "quay", AT)).aside).toBe(`${aside}-2`);
});

test("what lies in place of a studio's folder, or of the host's own, is told in a sentence and left alone", async () => {
  const place = await newHost();
  const at = (name: string) => join(place.host.root, name);
  writeFileSync(at("quay"), "notes");
  mkdirSync(at("loft"));
  writeFileSync(join(at("loft"), "notes.txt"), "notes");
  symlinkSync(at("nowhere"), at("mole"));
  mkdirSync(at("pier"));
  const add = (name: string) => addStudio(place.host, name, `https://${name}.example.org`);
  await expect(add("quay")).rejects.toThrow(/quay is not a folder, so no studio can be made there\. Move it away/);
  await expect(add("loft")).rejects.toThrow(/loft is a folder with other things in it, and no studio\.env/);
  await expect(add("mole")).rejects.toThrow(/mole is not a folder/);
  expect((await add("pier")).studio.folder).toBe(at("pier"));
  expect([readFileSync(at("quay"), "utf8"), readdirSync(at("loft"))]).toEqual(["notes", ["notes.txt"]]);
  writeFileSync(at("incoming"), "");
  await expect(add("hall")).rejects.toThrow(/incoming is not a folder, and the host needs one of that name/);
  expect(readdirSync(place.host.root).filter((name) => name.startsWith("."))).toEqual([]);
});

test("bad settings of a host and a folder that is not there are told in a sentence", async () => {
  const place = await newHost();
  expect(() => openHost(join(place.folder, "nowhere"))).toThrow(/install -d/);
  for (const [text, says] of [
    ["{", "is not JSON"],
    [`{"ports": [80, 90]}`, "ports"],
    [`{"port": 1}`, "cannot be used"],
  ] as const) {
    writeFileSync(join(place.host.root, "host.json"), text);
    expect(() => openHost(place.host.root)).toThrow(says);
  }
  const [first] = place.host.settings.ports;
  const full = { ...place.host, settings: { ...place.host.settings, ports: [first, first] as [number, number] } };
  await addStudio(full, "quay", "https://quay.example.org");
  await expect(addStudio(full, "pier", "https://pier.example.org")).rejects.toThrow(/No port/);
});

test.skipIf(process.getuid?.() !== 0)(
  "files that the superuser makes belong to the account of the folder",
  async () => {
    const place = await newHost();
    const out = join(ROOT, "dist-tests/host-owner");
    await bundleServer({ studio: "server/cli/studio.ts" }, out, "external");
    const [uid, gid] = [65_534, 65_534];
    for (const path of [place.folder, place.host.root]) chownSync(path, uid, gid);
    const env = { ...process.env, SPRINGLINE_STUDIOS: place.host.root };
    const words = [join(out, "studio.js"), "add", "quay", "--url", "https://quay.example.org"];
    const { status, stderr } = spawnSync(process.execPath, words, { cwd: ROOT, env, encoding: "utf8" });
    expect([status, stderr]).toEqual([0, ""]);
    for (const path of ["quay", "quay/data", "quay/studio.env", "hosts.map", "host.lock"])
      expect(statSync(join(place.host.root, path)).uid, path).toBe(uid);
  },
);

test("a host that a studio has left leads on to where it has moved since, and not to another of its name", async () => {
  const [first, third] = [await newHost(), await newHost()];
  mkdirSync(join(first.host.root, "moved"));
  const left = { name: "quay", hostName: "quay.example.org", at: "192.0.2.7:4400", to: "/mnt/second" };
  writeFileSync(join(first.host.root, "moved", "quay.json"), JSON.stringify(left));
  const lines = { stopHere: "false", startHere: "false", startThere: "false" };
  const on = { ...{ from: first.host, to: third.host, name: "quay", lines, at: AT }, say: () => undefined };
  await expect(moveStudio(on)).rejects.toThrow(/moved to \/mnt\/second already/);
  await addStudio(third.host, "quay", "https://other.example.org");
  await expect(moveStudio(on)).rejects.toThrow(/moved to \/mnt\/second already/);
  await removeStudio(third.host, "quay", AT);
  const { studio } = await addStudio(third.host, "quay", "https://quay.example.org");
  expect((await moveStudio(on)).studio.folder).toBe(studio.folder);
  expect(mapOf(first)).toBe(`quay.example.org 127.0.0.1:${studio.env.port}\n`);
  await expect(addStudio(first.host, "pier", "https://quay.example.org")).rejects.toThrow(/which has moved to/);
  expect((await removeStudio(first.host, "quay", AT)).aside).toBe(null);
  expect(mapOf(first)).toBe("");
});

test("a move that cannot be carried out leaves the studio where it is, and says why", async () => {
  const [a, b] = [await newHost(), await newHost()];
  const { studio } = await addStudio(a.host, "quay", "https://quay.example.org");
  const lines = { stopHere: "true", startHere: "true", startThere: "true" };
  const move = { ...{ from: a.host, to: b.host, name: "quay", lines, at: AT }, say: () => undefined };
  await expect(moveStudio(move)).rejects.toThrow(/no database yet/);
  openDatabase(databaseIn(studio.folder)).close();
  const stopHere = "echo it is masked >&2; false";
  await expect(moveStudio({ ...move, lines: { ...lines, stopHere } })).rejects.toThrow(
    /could not be stopped \(it is masked\)\. It goes on in/,
  );
  await expect(moveStudio({ ...move, to: a.host })).rejects.toThrow(/already/);
  await addStudio(b.host, "pier", "https://quay.example.org");
  await expect(moveStudio(move)).rejects.toThrow(/address of the studio pier/);
  await removeStudio(b.host, "pier", AT);
  // The other end's start fails: the studio is there all the same, and is not started here again.
  await expect(moveStudio({ ...move, lines: { ...lines, startThere: "exit 3" } })).rejects.toThrow(
    /is in .* now, and was not started there \(it ended with 3\)/,
  );
  const [aside = ""] = readdirSync(join(a.host.root, "set-aside"));
  expect(() => openDatabase(databaseIn(join(a.host.root, "set-aside", aside)))).toThrow(/has moved to/);
  expect(studiosOf(b.host).map(({ name }) => name)).toEqual(["quay"]);
});

/** Answers as a studio at its port: with its name, and the address that the proxy says it was asked from. */
async function answeringAt(name: string, port: number): Promise<WebSocketServer> {
  const server = createServer((asked, answer) => answer.end(`${name} ${asked.headers["x-forwarded-for"]}`));
  const sockets = new WebSocketServer({ server });
  sockets.on("connection", (socket) => socket.on("message", (data) => socket.send(`${name} ${data}`)));
  await new Promise<void>((done) => server.listen(port, "127.0.0.1", done));
  ends.push(() => {
    for (const socket of sockets.clients) socket.terminate();
    server.closeAllConnections();
    server.close();
  });
  return sockets;
}

/** Through the proxy, as somebody who claims another address. */
function asked({ front }: TestHostFolder, host: string, agent: Agent): Promise<{ status: number; text: string }> {
  return new Promise((resolve, reject) => {
    const headers = { host, "x-forwarded-for": "203.0.113.9" };
    // Without a server name connections are shared by all host names, as a browser does under one certificate.
    const to = { port: front, host: "127.0.0.1", servername: "", agent, headers, rejectUnauthorized: false };
    const call = request(to, (answer) => {
      let text = "";
      answer.on("data", (data: Buffer) => {
        text += data.toString();
      });
      answer.on("end", () => resolve({ status: answer.statusCode ?? 0, text }));
    });
    call.on("error", reject);
    call.end();
  });
}

const checkFile = (place: TestHostFolder) =>
  spawnSync(haproxy ?? "", ["-c", "-f", haproxyFor(place)], { encoding: "utf8" });

test.skipIf(haproxy === undefined)(
  "each host name leads to its own studio, on shared connections too; changes reach a proxy that runs and cut nothing",
  { timeout: 60_000 },
  async () => {
    const place = await newHost();
    for (const name of ["quay", "pier"]) {
      const { studio } = await addStudio(place.host, name, `https://${name}.example.org`);
      await answeringAt(name, studio.env.port);
    }
    expect(checkFile(place).status).toBe(0);
    ends.push(await startProxy(haproxy ?? "", place));
    const agent = new Agent({ keepAlive: true, maxSockets: 3 });
    ends.push(() => agent.destroy());
    const many = Array.from({ length: 300 }, (_, n) => (n % 2 === 0 ? "quay" : "PIER"));
    const answers = await Promise.all(many.map((name) => asked(place, `${name}.example.org:${place.front}`, agent)));
    expect(answers.map(({ text }) => text)).toEqual(many.map((name) => `${name.toLowerCase()} 127.0.0.1`));

    const socket = new WebSocket(`wss://127.0.0.1:${place.front}/`, {
      headers: { host: "quay.example.org" },
      rejectUnauthorized: false,
    });
    const heard: string[] = [];
    socket.on("message", (data) => heard.push(String(data)));
    ends.push(() => socket.terminate());
    await eventually("the socket opens", () => socket.readyState === WebSocket.OPEN);
    expect((await asked(place, "loft.example.org", agent)).status).toBe(404);
    const { studio, proxy } = await addStudio(place.host, "loft", "https://loft.example.org");
    expect(proxy).toBe(null);
    await answeringAt("loft", studio.env.port);
    expect((await asked(place, "loft.example.org", agent)).text).toContain("loft");
    expect((await removeStudio(place.host, "pier", AT)).proxy).toBe(null);
    expect(await asked(place, "pier.example.org", agent)).toMatchObject({ status: 404 });
    socket.send("still here");
    await eventually("the socket was not cut", () => heard.includes("quay still here"));
    const { studios } = await listStudios(place.host);
    expect(studios.map(({ name }) => name)).toEqual(["loft", "quay"]);
  },
);

test.skipIf(haproxy === undefined)(
  "HAProxy takes its file with a map of a thousand studios, and an empty one",
  async () => {
    const place = await newHost();
    appendFileSync(join(place.host.root, "hosts.map"), "");
    expect(checkFile(place).status).toBe(0);
    const lines = Array.from({ length: 1000 }, (_, n) => `studio-${n}.example.org 127.0.0.1:${4400 + n}`);
    writeFileSync(join(place.host.root, "hosts.map"), `${lines.join("\n")}\n`);
    expect(checkFile(place).status).toBe(0);
  },
);
