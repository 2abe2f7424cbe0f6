/** Is the process fit to serve? For a supervisor or a proxy: nothing secret, cheap, no session needed. */
import { studioExists } from "#db/repos/studio-repo.ts";
import type { Springline } from "#server/springline.ts";

/** 200 when the database answers and no document waits for a failing disk, else 503. */
export function readHealth(app: Springline): Response {
  const { rooms, connections, failing } = app.rooms.health();
  const database = databaseAnswers(app);
  const healthy = database && failing.length === 0;
  const body = { ok: healthy, database, rooms, connections, unsavedDocuments: failing.length };
  return Response.json(body, { status: healthy ? 200 : 503, headers: { "cache-control": "no-store" } });
}

function databaseAnswers(app: Springline): boolean {
  try {
    studioExists(app.db);
    return true;
  } catch (err) {
    app.log.error({ err }, "the database does not answer");
    return false;
  }
}
