/**
 * A sync server in its own process, to be killed. Everybody is signed in and may write; every plan that is asked
 * for exists. Arguments: database file, program of the checkpointing thread, `beside` where
 * logs are folded on a thread. Prints `port <n>` when it can be reached.
 */
import { createServer } from "node:http";
import * as Y from "yjs";
import { openDatabase } from "#db/connection.ts";
import { checkpointBeside } from "#db/file/checkpoints.ts";
import { PLAN_BOUNDS } from "#lib/doc/bounds.ts";
import { PLAN_DOC_VERSION } from "#lib/doc/layout.ts";
import { migrate } from "#lib/doc/migrate.ts";
import { planProtection } from "#lib/doc/protected-parts.ts";
import { foldInThread } from "#server/doc-log/fold-in-thread.ts";
import { attachSync } from "#server/sync/attach.ts";
import { createDocumentRooms } from "#server/sync/document-rooms.ts";
import type { KindHooks } from "#server/sync/host.ts";

const [, , file = "", program = "", folds = "here"] = process.argv;
const db = openDatabase(file);
const silent = () => undefined;
// So often that it is sometimes killed during a checkpoint.
checkpointBeside(db, { log: { warn: console.error }, everyMs: 2, program });
const kind: KindHooks = {
  currentVersion: PLAN_DOC_VERSION,
  migrate,
  holds: planProtection,
  bounds: PLAN_BOUNDS,
  create: () => new Y.Doc(),
};
const rooms = createDocumentRooms({
  db,
  log: { info: silent, warn: silent, error: console.error },
  host: {
    authenticate: async (headers) => {
      const userId = headers.get("cookie") ?? "nobody";
      return { sessionId: userId, userId, name: userId };
    },
    accessTo: () => () => ({ exists: true, reads: true, writes: true, comments: true }),
    kinds: { plan: kind, month: kind },
  },
  // Folds during the burst, so that it is sometimes killed there too.
  limits: { compactRowsBusy: 40, foldHereRows: 10 },
  ...(folds === "beside" ? { fold: foldInThread(file) } : {}),
});
const http = createServer();
attachSync({ rooms, server: http });
http.listen(0, "127.0.0.1", () => {
  const address = http.address();
  if (typeof address === "object") console.log(`port ${address?.port}`);
});
