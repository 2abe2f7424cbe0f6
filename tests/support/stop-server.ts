/**
 * A sync server in its own process, to be stopped and started again. Everybody is signed in and may write; every plan that
 * is asked for exists. On SIGTERM it stops in the order in which the program does and ends with 0. Arguments: database file, port.
 * Prints `port <n>` when it can be reached. `GET /slow` is answered after half a second.
 */
import * as Y from "yjs";
import { openDatabase } from "#db/connection.ts";
import { PLAN_BOUNDS } from "#lib/doc/bounds.ts";
import { PLAN_DOC_VERSION } from "#lib/doc/layout.ts";
import { migrate } from "#lib/doc/migrate.ts";
import { planProtection } from "#lib/doc/protected-parts.ts";
import { createLog } from "#server/base/log.ts";
import { serve } from "#server/http/serve.ts";
import { attachSync } from "#server/sync/attach.ts";
import { createDocumentRooms } from "#server/sync/document-rooms.ts";
import type { KindHooks } from "#server/sync/host.ts";

const [, , file = "", port = "0"] = process.argv;
const db = openDatabase(file);
const kind: KindHooks = {
  ...{ currentVersion: PLAN_DOC_VERSION, migrate, holds: planProtection, bounds: PLAN_BOUNDS },
  create: () => new Y.Doc(),
};
const rooms = createDocumentRooms({
  db,
  log: createLog("error", { to: 2 }),
  host: {
    authenticate: async (headers) => {
      const userId = headers.get("cookie") ?? "nobody";
      return { sessionId: userId, userId, name: userId };
    },
    accessTo: () => () => ({ exists: true, reads: true, writes: true, comments: true }),
    kinds: { plan: kind, month: kind },
  },
});
const door = attachSync({ rooms });
const serving = await serve({
  env: { host: "127.0.0.1", port: Number(port), origin: "http://localhost", trustProxy: false },
  log: createLog("error", { to: 2 }),
  gate: () => false,
  handle: (_request, response) => setTimeout(() => response.end("all of it"), 500),
  upgrade: door.handleUpgrade,
});
process.on("SIGTERM", async () => {
  door.detach();
  const closed = serving.close(3000);
  const { unsaved } = await rooms.stop(10_000);
  await closed;
  db.close();
  process.exit(unsaved.length);
});
console.log(`port ${serving.port}`);
