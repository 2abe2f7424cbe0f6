/** The record after a kill, and the command that proves it. */
import { type ChildProcess, spawn, spawnSync } from "node:child_process";
import { renameSync } from "node:fs";
import { join } from "node:path";
import { afterEach, beforeAll, beforeEach, expect, test } from "vitest";
import { addPlanEvent } from "#db/repos/event-repo.ts";
import { recordHead } from "#db/repos/record-repo.ts";
import { recordFinding } from "#server/doctor/record.ts";
import { proveRecord } from "#server/record/prove-record.ts";
import { bundleServer, ROOT } from "#tests/support/bundle-server.ts";
import { eventually } from "#tests/support/eventually.ts";
import { often } from "#tests/support/long.ts";
import { type TempDb, tempDb } from "#tests/support/temp-db.ts";

const BUNDLES = join(ROOT, "node_modules/.cache/springline-tests/record");
const KILLS = often(3, 50);
const children: ChildProcess[] = [];
let temp: TempDb;
beforeAll(() => bundleServer({ "record-writer": "tests/support/record-writer.ts" }, BUNDLES));
beforeEach(() => {
  temp = tempDb();
});
afterEach(() => {
  for (const child of children.splice(0)) child.kill("SIGKILL");
  temp.remove();
});

test(`[INV-26] kill -9, ${KILLS} times: the record holds and goes on`, { timeout: 120_000 }, async () => {
  let before = 0;
  for (let n = 0; n < KILLS; n++) {
    const child = spawn(process.execPath, [join(BUNDLES, "record-writer.js"), temp.file], { cwd: ROOT });
    children.push(child);
    let said = "";
    child.stdout?.on("data", (chunk: Buffer) => {
      said += chunk.toString();
    });
    await eventually("it writes", () => said.includes("up"), 30_000);
    await new Promise((done) => setTimeout(done, 7 * (n + 1)));
    child.kill("SIGKILL");
    await eventually("it is dead", () => child.signalCode === "SIGKILL");
    const db = temp.open();
    expect(proveRecord(db)).toMatchObject({ holds: true });
    expect(recordHead(db).seq).toBeGreaterThan(before);
    expect(recordHead(db).seq % 2).toBe(0);
    before = recordHead(db).seq;
    db.close();
  }
});

test("[INV-26] the command proves the record beside a running server, and names the first row that fails", () => {
  const db = temp.open();
  for (let n = 0; n < 1234; n++) addPlanEvent(db, { planId: "p", at: n, actorId: "a", kind: "shared" });
  const { seq, hash } = recordHead(db);
  renameSync(temp.file, join(temp.folder, "springline.sqlite"));
  for (const end of ["-wal", "-shm"]) renameSync(temp.file + end, join(temp.folder, `springline.sqlite${end}`));
  const holds = { status: 0, stdout: `The record holds: 1,234 rows, head ${seq}:${hash}\n`, stderr: "" };
  expect(record("verify")).toEqual(holds);
  expect(record("verify", "--head", `${seq}:${hash}`)).toEqual(holds);
  expect(record("verify", "--head", `1,000:${"0".repeat(64)}`)).toMatchObject({
    status: 1,
    stderr: expect.stringMatching(/^The record does not hold\. Row 1000 is not the one that was printed/),
  });
  expect(recordFinding({ databaseFile: join(temp.folder, "springline.sqlite") })).toMatchObject({
    is: "right",
    found: expect.stringContaining("1,234 rows"),
  });
  db.raw.exec("DROP TRIGGER record_never_updated; UPDATE record SET at = 0 WHERE seq = 77");
  expect(record("verify")).toEqual({
    status: 1,
    stdout: "",
    stderr:
      "The record does not hold. Row 77 was changed, or moved to another place: its hash is not that of what it says.\n",
  });
  expect(recordFinding({ databaseFile: join(temp.folder, "springline.sqlite") }).is).toBe("wrong");
}, 60_000);

test("a wrong call is answered with one line", () => {
  for (const words of [[], ["check"], ["verify", "--head"], ["verify", "--head", "12"], ["verify", "now"]]) {
    const { status, stderr } = record(...words);
    expect(status, words.join(" ")).toBe(1);
    expect(stderr.trim().split("\n").length, words.join(" ")).toBe(1);
  }
}, 60_000);

function record(...words: string[]): { status: number | null; stdout: string; stderr: string } {
  const env = { ...process.env, SPRINGLINE_DATA: temp.folder };
  const args = [join(ROOT, "server/cli/command.mjs"), "record", ...words];
  const { status, stdout, stderr } = spawnSync(process.execPath, args, { cwd: ROOT, env, encoding: "utf8" });
  return { status, stdout, stderr };
}
