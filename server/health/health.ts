/** Whether the process can serve, for a supervisor or a proxy: cheap, nothing secret, no session needed. */
import { statfsSync } from "node:fs";
import type { Db } from "#db/connection.ts";
import { writeProbe } from "#db/file/soundness.ts";
import { studioExists } from "#db/repos/studio-repo.ts";
import type { Springline } from "#server/context/springline.ts";

/** With less than this a commit may fail at any moment: SQLite's log alone grows to a few megabytes. Our own choice. */
const LEAST_FREE_BYTES = 32 * 1024 * 1024;
/** A write waits for the disk and anybody may ask, so one write in this time answers everybody. */
const PROBE_MS = 10_000;

type Asked = Pick<Springline, "db" | "env" | "log" | "now" | "documents">;

/**
 * 200 when the database can be read and written, is undamaged and has room, and no document is waiting for a failing disk;
 * otherwise 503 with a sentence for each problem. The whole file is only checked by `damage-watch.ts`, on a thread of its
 * own, since that reads every page.
 */
export function readHealth(app: Asked): Response {
  const { rooms, connections, failing } = app.documents.health();
  const damage = app.db.damage.known !== null && DAMAGED;
  const [database, problem] = damage ? [false, false] : databaseAnswers(app);
  const unsaved = failing.length > 0 && "Changes of a document could not be saved yet. The server keeps trying.";
  const problems = [damage, problem, roomLeft(app), unsaved].filter((one) => one !== false);
  const ok = problems.length === 0;
  const body = { ok, problems, database, rooms, connections, unsavedDocuments: failing.length };
  return Response.json(body, { status: ok ? 200 : 503, headers: { "cache-control": "no-store" } });
}

const DAMAGED = "The database is damaged. Stop the server and restore the latest backup.";

function databaseAnswers(app: Asked): readonly [boolean, string | false] {
  try {
    studioExists(app.db);
  } catch (err) {
    app.log.error({ err }, "the database cannot be read");
    return [false, "The database cannot be read. The server's log says why."];
  }
  const writes = canWrite(app);
  return [writes, !writes && "The database cannot be written. The server's log says why."];
}

const probes = new WeakMap<Db, { readonly at: number; readonly writes: boolean }>();

function canWrite({ db, log, now }: Asked): boolean {
  const last = probes.get(db);
  if (last && Math.abs(now() - last.at) < PROBE_MS) return last.writes;
  let writes = true;
  try {
    writeProbe(db.raw);
  } catch (err) {
    log.error({ err }, "the database cannot be written");
    writes = false;
  }
  probes.set(db, { at: now(), writes });
  return writes;
}

function roomLeft({ env, log }: Asked): string | false {
  try {
    const { bavail, bsize } = statfsSync(env.dataDir);
    return (
      bavail * bsize < LEAST_FREE_BYTES && "The disk is full or nearly full. Free some space on the data folder's disk."
    );
  } catch (err) {
    log.error({ err }, "the data folder cannot be examined");
    return "The data folder cannot be examined. The server's log says why.";
  }
}
