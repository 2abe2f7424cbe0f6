/** The commands at the keyboard on a damaged database, and with nobody reading what they say: one sentence, no stack trace. */
import { spawn } from "node:child_process";
import {
  closeSync,
  existsSync,
  mkdtempSync,
  openSync,
  readdirSync,
  rmSync,
  statSync,
  writeFileSync,
  writeSync,
} from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, expect, test } from "vitest";
import { openDatabase } from "#db/connection.ts";
import { lookMark } from "#db/file/soundness.ts";

const ROOT = join(import.meta.dirname, "../..");
let folder: string;
let file: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "springline-commands-"));
  file = join(folder, "data", "springline.sqlite");
  openDatabase(file).close();
  writeFileSync(join(folder, "data", "secret"), "a secret of this test alone, long enough", { mode: 0o600 });
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

interface Said {
  readonly code: number | null;
  readonly err: string;
}

/** `deaf`: whoever would read the output is gone before there is any. */
function run(command: string, args: readonly string[], deaf = false): Promise<Said> {
  const env = { ...process.env, SPRINGLINE_DATA: join(folder, "data"), SPRINGLINE_SECRET: undefined };
  const child = spawn(process.execPath, ["server/cli/command.mjs", command, ...args], { cwd: ROOT, env });
  if (deaf) child.stdout.destroy();
  else child.stdout.resume();
  let err = "";
  child.stderr.on("data", (chunk: Buffer) => {
    err += chunk.toString();
  });
  return new Promise((done) => child.once("close", (code) => done({ code, err })));
}

/** All pages but the first are no pages any more. */
function damage(): void {
  const size = statSync(file).size;
  const handle = openSync(file, "r+");
  writeSync(handle, Buffer.alloc(size - 4096, 0x5a), 0, size - 4096, 4096);
  closeSync(handle);
}

test("a backup and a reset link of a damaged database say what is wrong and what to do; the server is asked to look", async () => {
  damage();
  const said = await Promise.all([
    run("backup", [join(folder, "copy.tar")]),
    run("reset-password", ["ann@quay.example"]),
  ]);
  for (const { code, err } of said) {
    expect(code).toBe(1);
    expect(err).toMatch(/^The .*database.* is damaged \(.*npm run -s restore -- FILE\.?\n$/);
  }
  expect(existsSync(join(folder, "copy.tar"))).toBe(false);
  expect(existsSync(lookMark(file))).toBe(true);
}, 60_000);

test("a command whose output is closed does its work and ends quietly", async () => {
  const copy = join(folder, "copy.tar");
  expect(await run("backup", [copy], true)).toEqual({ code: 0, err: "" });
  expect(await run("restore", [copy], true)).toEqual({ code: 0, err: "" });
  expect(readdirSync(join(folder, "data")).some((name) => name.startsWith("before-restore"))).toBe(true);
}, 60_000);
