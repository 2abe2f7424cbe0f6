/**
 * A studio on a disk that is really full. Run with its temporary folder (`TMPDIR`) on a disk of its own, named by the first
 * argument. Prints as JSON what was said and kept, step by step.
 */
import { appendFileSync, rmSync, statfsSync } from "node:fs";
import { join } from "node:path";
import { listPlanRows } from "#db/repos/plan-repo.ts";
import { planParts } from "#lib/doc/layout.ts";
import { readHealth } from "#server/health/health.ts";
import { faultToError } from "#server/http/fault.ts";
import { createPlan } from "#server/plans/create-plan.ts";
import { eventually } from "./eventually.ts";
import { openStudio, ROOMS } from "./plan-studio.ts";
import { RawClient } from "./raw-client.ts";
import { startSyncServer } from "./sync-server.ts";

const [, , disk = ""] = process.argv;
const filler = join(disk, "filler");

/** To the last block: first in large pieces, then in small ones. */
function fill(): void {
  for (const piece of [Buffer.alloc(1 << 20), Buffer.alloc(4096), Buffer.alloc(1)]) {
    try {
      for (;;) appendFileSync(filler, piece);
    } catch {
      // No room for another piece of this size.
    }
  }
}

const server = await startSyncServer({ limits: { retryFirstMs: 20, retryLongestMs: 80 } });
server.addPlan("full");
const open = (user: string) =>
  new RawClient(server.url, { kind: "plan", key: "full" }, { cookie: server.host.signIn(user) }).synced();
const [writer, peer] = [await open("ines"), await open("marta")];
const studio = openStudio();
await writer.saved();

// SQLite writes over what is in its log already; an empty one has to grow.
for (const { raw } of [server.db, studio.db]) raw.pragma("wal_checkpoint(TRUNCATE)");
fill();
writer.edit((doc) => planParts(doc).notes.insert(0, "z".repeat(90_000)));
await eventually("the page is told", () => writer.newsOf("storage").at(-1)?.failing === true);
let refused = "";
try {
  createPlan(studio.app, studio.people.jonas, { title: "x".repeat(100), lengthSeconds: 600, roomId: ROOMS.harbour });
} catch (error) {
  refused = faultToError(error, studio.app, new Request("http://localhost/api/plans", { method: "POST" })).message;
}
const full = {
  free: statfsSync(disk).bavail,
  saved: writer.savedCount,
  peerSees: planParts(peer.doc).notes.length,
  refused,
  plans: listPlanRows(studio.db).length,
  health: readHealth(studio.app).status,
};

rmSync(filler);
await writer.saved();
await eventually("the peer has it", () => planParts(peer.doc).notes.length === 90_000);
const made = createPlan(studio.app, studio.people.jonas, { title: "After", lengthSeconds: 600, roomId: ROOMS.harbour });
const healed = {
  told: writer.newsOf("storage").at(-1)?.failing,
  made: made.ok,
  whole: [server.db, studio.db].map((db) => db.raw.pragma("integrity_check", { simple: true })),
};
for (const page of [writer, peer]) page.end();
await server.stop();
await studio.stop();
process.stdout.write(JSON.stringify({ full, healed }));
