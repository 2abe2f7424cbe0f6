/** Exports that are damaged, forged, too new or interrupted: each is refused in a sentence, and nothing is half done. */
import { spawn, spawnSync } from "node:child_process";
import { createHash } from "node:crypto";
import {
  appendFileSync,
  cpSync,
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  truncateSync,
  writeFileSync,
} from "node:fs";
import { join } from "node:path";
import fc from "fast-check";
import { afterAll, beforeAll, beforeEach, expect, test } from "vitest";
import { databaseFault } from "#db/file/copy.ts";
import { exportStudio } from "#server/studio-files/export-studio.ts";
import { importStudio } from "#server/studio-files/import-studio.ts";
import type { StudioManifest } from "#server/studio-files/manifest.ts";
import { unzipExport, zipExport } from "#server/studio-files/zip.ts";
import { fillEveryTable, personCalled } from "#tests/support/every-table.ts";
import { often } from "#tests/support/long.ts";
import { openSeeded, type SeededDatabase } from "#tests/support/seeded-database.ts";

const ROOT = join(import.meta.dirname, "../..");
let studio: SeededDatabase;
let whole: StudioManifest;
let out: string;
let bad: string;
let zip: string;

beforeAll(async () => {
  studio = await openSeeded();
  fillEveryTable(studio.app, personCalled(studio.app, "ines@tholepin.example").id);
  const { databaseFile, secret, origin } = studio.app.env;
  out = join(studio.folder, "out");
  whole = exportStudio({ databaseFile, secret, origin, program: "0.1.0", at: Date.UTC(2026, 10, 10) }, out);
  zip = join(studio.folder, "out.zip");
  await zipExport(out, whole, zip);
}, 120_000);
afterAll(() => studio.remove());
beforeEach(() => {
  bad = join(studio.folder, "bad");
  for (const name of [bad, place().dataDir]) rmSync(name, { recursive: true, force: true });
  cpSync(out, bad, { recursive: true });
});

const place = () => {
  const dataDir = join(studio.folder, "two");
  return { dataDir, databaseFile: join(dataDir, "springline.sqlite"), givenSecret: undefined };
};

/** The sentence of the refusal; afterwards there is no studio and nothing left over. */
async function refusal(from = bad): Promise<string> {
  const said = await importStudio(place(), from).then(
    () => "imported",
    (error: unknown) => (error instanceof Error ? `${error.name}: ${error.message}` : "no error"),
  );
  expect(existsSync(place().databaseFile), said).toBe(false);
  expect(readdirSync(place().dataDir).filter((name) => name.startsWith(".import"))).toEqual([]);
  expect(said).toMatch(/^StudioFilesRefused: [^\n]+\.$/);
  return said;
}

/** Writes a line anew and makes the manifest say so, as somebody would who wants it imported. */
function forge(path: string, change: (lines: string[]) => string[]): void {
  const file = join(bad, path);
  const lines = change(readFileSync(file, "utf8").trimEnd().split("\n"));
  writeFileSync(file, `${lines.join("\n")}\n`);
  const name = join(bad, "manifest.json");
  const manifest = JSON.parse(readFileSync(name, "utf8")) as StudioManifest;
  const bytes = readFileSync(file);
  const table = path.slice("tables/".length, -".jsonl".length);
  const files = manifest.files.map((one) =>
    one.path === path ? { path, bytes: bytes.length, sha256: createHash("sha256").update(bytes).digest("hex") } : one,
  );
  const tables = { ...manifest.tables, [table]: lines.length };
  writeFileSync(name, JSON.stringify({ ...manifest, files, tables }));
}

const edited =
  (key: string, value: unknown, at = 0) =>
  (lines: string[]) =>
    lines.map((line, i) => (i === at ? JSON.stringify({ ...JSON.parse(line), [key]: value }) : line));

const setting = (name: string, data: unknown) => (lines: string[]) => [
  ...lines.filter((line) => JSON.parse(line).name !== name),
  JSON.stringify({ name, data_json: JSON.stringify(data), updated_at: 1 }),
];

test("any file with one byte changed, added or cut, or missing, is named", async () => {
  await fc.assert(
    fc.asyncProperty(
      fc.constantFrom(...whole.files.map(({ path }) => path)),
      fc.constantFrom("changed", "added", "cut", "missing"),
      fc.double({ min: 0, max: 1, maxExcluded: true, noNaN: true }),
      async (path, how, where) => {
        const file = join(bad, path);
        const before = readFileSync(file);
        const size = statSync(file).size;
        fc.pre(size > 0);
        if (how === "missing") rmSync(file);
        else if (how === "added") appendFileSync(file, "x");
        else if (how === "cut") truncateSync(file, Math.floor(where * size));
        else {
          const bytes = Buffer.from(before);
          const at = Math.floor(where * size);
          bytes[at] = (bytes[at] ?? 0) ^ 1;
          writeFileSync(file, bytes);
        }
        expect(await refusal()).toContain(`${path} `);
        writeFileSync(file, before);
      },
    ),
    { numRuns: often(24, 60) },
  );
}, 60_000);

test.each([
  ["no manifest", () => rmSync(join(bad, "manifest.json")), /has no manifest\.json/],
  ["a manifest that is not JSON", () => writeFileSync(join(bad, "manifest.json"), "{"), /not readable/],
  ["a newer format", () => manifestWith({ version: 2 }), /newer version of Springline/],
  ["a file outside", () => manifestWith({ files: [{ path: "../x", bytes: 0, sha256: "0".repeat(64) }] }), /outside/],
  ["a table it does not know", () => manifestWith({ tables: { ...whole.tables, moods: 3 } }), /holds "moods".*Update/],
  ["another end of the record", () => manifestWith({ record: { seq: 1, hash: "0" } }), /record does not end/],
])("refused: %s", async (_, damage, says) => {
  damage();
  expect(await refusal()).toMatch(says);
});

function manifestWith(change: Partial<StudioManifest>): void {
  writeFileSync(join(bad, "manifest.json"), JSON.stringify({ ...whole, ...change }));
}

test.each<[string, string, (lines: string[]) => string[], RegExp]>([
  ["a column it does not know", "plan", edited("mood", "good"), /tables\/plan\.jsonl, line 1: "mood" is unknown/],
  ["a number for words", "plan", edited("title", 3, 1), /tables\/plan\.jsonl, line 2: "title" does not fit/],
  ["null where there must be a value", "room", edited("name", null), /room\.jsonl, line 1: "name" does not fit/],
  [
    "a missing column",
    "user",
    (lines) => lines.map((line) => line.replace('"name"', '"nome"')),
    /"nome" is unknown|"name" is missing/,
  ],
  ["broken JSON in a column", "move", edited("data_json", "{"), /move\.jsonl, line 1: "data_json" is not JSON/],
  ["bytes that are not base64", "doc_update", edited("bytes", "?"), /doc_update\.jsonl, line 1: "bytes" does not fit/],
  [
    "a document that cannot be read",
    "doc_update",
    edited("bytes", "AAAA"),
    /cannot be read completely|has no document/,
  ],
  ["a row twice", "plan", (lines) => [...lines, lines[0] ?? ""], /plan\.jsonl, line \d+: this row does not fit/],
  [
    "a member whom nobody is",
    "user",
    (lines) => lines.slice(1),
    /name others that are not in it|does not hold|manager/,
  ],
  ["a changed signature", "edition", edited("card_json", "{}"), /does not hold|not what was signed/],
  ["a changed row of the record", "record", edited("actor_id", "x", 2), /record does not hold.*Row 3/],
  ["a row of the record missing", "record", (lines) => lines.toSpliced(4, 1), /record\.jsonl|record/],
  [
    "a log that was inserted",
    "class_log",
    (lines) => [...lines, lines.at(-1)?.replace(/"session_id":"./, '"session_id":"q') ?? ""],
    /was inserted/,
  ],
  [
    "another key",
    "signing_key",
    edited("public_key", Buffer.alloc(32, 7).toString("base64url")),
    /not what was signed/,
  ],
  [
    "machines that are none",
    "room",
    edited("equipment_json", "{}"),
    /room\.jsonl, line 1: "equipment_json" is not what/,
  ],
  ["a state that no plan has", "plan", edited("state", "zzz", 1), /plan\.jsonl, line 2: "state" is not what/],
  [
    "a move without parts",
    "move",
    edited("data_json", '{"name":"x"}'),
    /move\.jsonl, line 1: "data_json".*, at "station"/,
  ],
  ["a name of two lines", "user", edited("name", "A\r\nB"), /user\.jsonl, line 1: "name" is not what/],
  ["a name that is too long", "user", edited("name", "x".repeat(101)), /user\.jsonl, line 1: "name" is not what/],
  ["no address", "user", edited("email", "petra"), /user\.jsonl, line 1: "email" is not what/],
  ["a role that nobody has", "member", edited("role", "owner"), /member\.jsonl, line 1: "role" is not what/],
  ["a studio's name of two lines", "studio", edited("name", "A\nB"), /studio\.jsonl, line 1: "name" is not what/],
  ["a level that no rule has", "studio", edited("standards_json", '{"x":{"level":"no"}}'), /at "x\.level"/],
  ["formats of no language", "studio_setting", setting("formats", { dates: "zz" }), /"data_json".*at "dates"/],
  ["a month without a zone", "studio_setting", setting("month", { uid: "x" }), /"data_json".*at "zone"/],
  ["a rubric without criteria", "studio_setting", setting("rubric", { criteria: [] }), /"data_json".*at "criteria"/],
  ["a line that is no row", "remark", (lines) => [...lines, "[1]"], /remark\.jsonl, line \d+: this is not a row/],
])("refused though its manifest fits: %s", async (_, table, change, says) => {
  forge(`tables/${table}.jsonl`, change);
  expect(await refusal()).toMatch(says);
});

test("a forged row whose fault the manifest declares is refused by its fault, and taken only when asked", async () => {
  forge("tables/edition.jsonl", edited("card_json", "{}"));
  const name = join(bad, "manifest.json");
  const declare = (faults: readonly string[]) =>
    writeFileSync(name, JSON.stringify({ ...JSON.parse(readFileSync(name, "utf8")), faults }));
  const unasked = /^StudioFilesRefused: (.*) Nothing was imported\. Export the studio again\.$/;
  const faults: string[] = [];
  const asked = () => importStudio(place(), bad, { withFaults: true });
  const first = await refusal();
  for (let said: string | undefined = first; said !== undefined; ) {
    faults.push(unasked.exec(said)?.[1] ?? expect.fail(said));
    declare(faults);
    const shown = await refusal();
    for (const fault of faults) expect(shown).toContain(fault);
    expect(shown).toMatch(/Nothing was imported\. If you know why, add --with-faults\.$/);
    said = await asked().then(
      () => undefined,
      (error: unknown) => String(error),
    );
    if (said !== undefined) rmSync(place().dataDir, { recursive: true, force: true });
  }
  expect(faults.length).toBeGreaterThan(0);
  expect(existsSync(place().databaseFile)).toBe(true);
});

test("the zip holds the same; one that is cut or changed anywhere is refused", async () => {
  await importStudio(place(), zip);
  expect(databaseFault(place().databaseFile)).toBeUndefined();
  rmSync(place().dataDir, { recursive: true });
  const bytes = readFileSync(zip);
  const broken = join(studio.folder, "broken.zip");
  let refused = 0;
  for (let part = 1; part < 24; part++) {
    const at = Math.floor((bytes.length * part) / 24);
    const changed = Buffer.from(bytes);
    changed[at] = (changed[at] ?? 0) ^ 0x10;
    writeFileSync(broken, part % 3 === 0 ? bytes.subarray(0, at) : changed);
    mkdirSync(place().dataDir, { recursive: true });
    const end = await importStudio(place(), broken).catch((error: unknown) => String(error));
    // A time or a mode in the heads of the archive means nothing to the studio: what comes in is whole all the same.
    if (typeof end === "string") expect(end, `part ${part}`).toMatch(/^StudioFilesRefused: [^\n]+\.$/);
    else expect(end).toEqual(whole);
    if (typeof end === "string") refused++;
    rmSync(place().dataDir, { recursive: true });
  }
  expect(refused).toBeGreaterThanOrEqual(15);
}, 60_000);

test("a zip that would fill the disk, or holds what its manifest does not name, is refused before it is unpacked", async () => {
  const packed = join(studio.folder, "packed.zip");
  const zeros = { path: "zeros.txt", bytes: 1_000_000_000, sha256: "0".repeat(64) };
  const pack = async (content: string, files: StudioManifest["files"], named = files) => {
    rmSync(packed, { force: true });
    cpSync(out, bad, { recursive: true });
    writeFileSync(join(bad, zeros.path), content);
    writeFileSync(join(bad, "manifest.json"), JSON.stringify({ ...whole, files: named }));
    await zipExport(bad, { ...whole, files }, packed);
  };
  await pack("x", [...whole.files, zeros]);
  expect(await refusal(packed)).toMatch(/would unpack to 1\d{3} MB, far more than/);
  await pack("x", [...whole.files, zeros], whole.files);
  expect(await refusal(packed)).toMatch(/holds "zeros\.txt", which its manifest\.json does not name/);
  await pack("xy", [...whole.files, zeros], [...whole.files, { ...zeros, bytes: 1 }]);
  expect(await refusal(packed)).toMatch(/zeros\.txt in .* is damaged: it has another length/);
  const little = join(studio.folder, "little");
  mkdirSync(little);
  await expect(unzipExport(zip, little, async () => 1_000_000)).rejects.toThrow(
    /import needs \d+ MB, and 1 MB are free/,
  );
  expect(readdirSync(little)).toEqual([]);
});

test("killed at any moment, an import leaves an empty studio, and the next one works", async () => {
  const env = { ...process.env, SPRINGLINE_DATA: place().dataDir, SPRINGLINE_SECRET: undefined };
  const args = ["server/cli/command.mjs", "import", out];
  // Bundles it, so that the kills come while it starts and works.
  spawnSync(process.execPath, args.slice(0, 2), { cwd: ROOT, env });
  let before = 0;
  for (const wait of [150, 300, 450, 700, 1000]) {
    const child = spawn(process.execPath, args, { cwd: ROOT, env, stdio: "ignore" });
    const ended = new Promise((done) => child.once("exit", done));
    await new Promise((done) => setTimeout(done, wait));
    child.kill("SIGKILL");
    await ended;
    if (!existsSync(place().databaseFile)) before++;
    else expect(databaseFault(place().databaseFile)).toBeUndefined();
    rmSync(place().databaseFile, { force: true });
  }
  expect(before).toBeGreaterThan(0);
  const manifest = await importStudio(place(), out);
  expect(manifest.record).toEqual(whole.record);
  expect(readdirSync(place().dataDir).filter((name) => name.startsWith(".import"))).toEqual([]);
}, 60_000);
