/** A fence that is no file of ours keeps everybody out: it is not known then where the studio is. */
import {
  lstatSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  statSync,
  symlinkSync,
  writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { beforeEach, expect, test } from "vitest";
import { openDatabase } from "#db/connection.ts";
import { type Fence, fenceSentence, readFence, removeFence, writeFence } from "#db/file/fence.ts";
import { writeWhole } from "#db/file/whole-file.ts";

const FENCE: Fence = { state: "moved", id: "one", place: "/srv/second", at: 1 };
let folder: string;
let database: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "springline-fence-"));
  database = join(folder, "springline.db");
  openDatabase(database).close();
  return () => rmSync(folder, { recursive: true, force: true });
});

test.each([
  ["to nothing", () => join(folder, "not-mounted", "fence")],
  ["to a fence that was lifted", () => join(folder, "gone")],
  ["to a file", () => database],
  ["to itself", () => `${database}.fence`],
])("a link %s is a fence that cannot be read, and the database is not opened", (_, target) => {
  symlinkSync(target(), `${database}.fence`);
  expect(() => readFence(database)).toThrow();
  expect(fenceSentence(database)).toMatch(/\.fence cannot be read, so it is not known whether this studio has moved/);
  expect(() => openDatabase(database)).toThrow(/cannot be read, so it is not known/);
  expect(() => openDatabase(database, { beside: true })).toThrow(/cannot be read, so it is not known/);
  expect(lstatSync(`${database}.fence`).isSymbolicLink()).toBe(true);
  removeFence(database);
  openDatabase(database).close();
});

test("a folder in its place likewise; a link to a good fence too, since what it leads to may go", () => {
  mkdirSync(`${database}.fence`);
  expect(() => openDatabase(database)).toThrow(/cannot be read/);
  const other = join(folder, "other.db");
  writeFence(other, FENCE);
  renameSync(`${database}.fence`, join(folder, "aside"));
  symlinkSync(`${other}.fence`, `${database}.fence`);
  expect(() => openDatabase(database)).toThrow(/cannot be read/);
});

test("a fence takes the place of a link, and what the link leads to stays as it was", () => {
  const outside = join(folder, "outside");
  writeFileSync(outside, "theirs");
  symlinkSync(outside, `${database}.fence`);
  symlinkSync(outside, `${database}.fence.new`);
  writeFence(database, FENCE);
  expect(readFence(database)).toEqual(FENCE);
  expect(lstatSync(`${database}.fence`).isFile()).toBe(true);
  expect(statSync(`${database}.fence`).mode & 0o777).toBe(0o600);
  expect(readFileSync(outside, "utf8")).toBe("theirs");
});

test("a file written whole has its mode although one with another was left from a write that was cut off", () => {
  const file = join(folder, "hosts.map");
  writeFileSync(`${file}.new`, "half of it, and more", { mode: 0o644 });
  writeWhole(file, "all of it");
  expect([readFileSync(file, "utf8"), statSync(file).mode & 0o777]).toEqual(["all of it", 0o600]);
  expect(readdirSync(folder)).not.toContain("hosts.map.new");
});
