/**
 * The program without its pages, for a studio on a host: it reads its settings as the program does, and has the real database,
 * devices, screens of a room and health. Of the documents it asks nobody who they are: everybody may write every plan.
 */
import * as Y from "yjs";
import { GET as cards } from "#app/api/devices/cards/route.ts";
import { GET as health } from "#app/api/health/route.ts";
import { PLAN_BOUNDS } from "#lib/doc/bounds.ts";
import { PLAN_DOC_VERSION } from "#lib/doc/layout.ts";
import { migrate } from "#lib/doc/migrate.ts";
import { planProtection } from "#lib/doc/protected-parts.ts";
import { readEnv } from "#server/base/env.ts";
import { createLog } from "#server/base/log.ts";
import { createTroubles } from "#server/base/troubles.ts";
import { attachLine } from "#server/line/attach.ts";
import { createLineHost } from "#server/line/host.ts";
import { compose } from "#server/main/compose.ts";
import { openDatabaseFor } from "#server/main/demo-database.ts";
import { attachSync } from "#server/sync/attach.ts";
import { createDocumentRooms } from "#server/sync/document-rooms.ts";
import type { KindHooks } from "#server/sync/host.ts";
import { startRoutes } from "./route-server.ts";

const env = readEnv("live");
const log = createLog("error", { to: 2 });
const db = openDatabaseFor(env);
const { app, checkpoints, soundness, clock } = compose({ env, log, troubles: createTroubles() }, db);
const kind: KindHooks = {
  ...{ currentVersion: PLAN_DOC_VERSION, migrate, holds: planProtection, bounds: PLAN_BOUNDS },
  create: () => new Y.Doc(),
};
const rooms = createDocumentRooms({
  ...{ db, log },
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
const line = attachLine({
  ...{ host: createLineHost(app), log },
  clock: { now: () => performance.now(), wall: Date.now, epoch: app.newId() },
  isOriginAllowed: () => true,
});
const { serving } = await startRoutes({
  ...{ env, port: env.port, log },
  routes: { "GET /api/health": health, "GET /api/devices/cards": cards },
  upgrade: (request, socket, head) =>
    door.handleUpgrade(request, socket, head) || line.handleUpgrade(request, socket, head),
});
process.on("SIGTERM", async () => {
  for (const watch of [soundness, clock]) watch.stop();
  door.detach();
  line.stop();
  const closed = serving.close(3000);
  const { unsaved } = await rooms.stop(10_000);
  await app.documents.stop(0);
  await app.checks.stop();
  await closed;
  await checkpoints.stop();
  db.close();
  process.exit(unsaved.length);
});
console.log(`port ${serving.port}`);
