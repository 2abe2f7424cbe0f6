/**
 * A server in its own process, to be attacked: live documents on one port, routes behind the real gate on another, one
 * thread for both, and a log on a full disk. Prints one line of JSON with its addresses and the sessions of its
 * people, and keeps a plan `p` for them. Argument: how many sockets one person may have, where a test needs another number.
 */
import { existsSync, openSync } from "node:fs";
import * as authRoute from "#app/api/auth/[...all]/route.ts";
import * as pairRoute from "#app/api/devices/pair/route.ts";
import * as firstRunRoute from "#app/api/first-run/route.ts";
import * as healthRoute from "#app/api/health/route.ts";
import * as importRoute from "#app/api/plans/import/route.ts";
import { createLog } from "#server/base/log.ts";
import { setSpringline } from "#server/context/springline.ts";
import { addDevice } from "#server/devices/manage-devices.ts";
import { foldInThread } from "#server/doc-log/fold-in-thread.ts";
import { must, openStudio, ROOMS } from "./plan-studio.ts";
import { startRoutes } from "./route-server.ts";
import { signInAll } from "./sign-in.ts";
import { startSyncServer } from "./sync-server.ts";

const FULL = "/dev/full";
const log = existsSync(FULL) ? createLog("info", { to: openSync(FULL, "w") }) : undefined;
// The log is folded repeatedly, whatever else happens.
const limits = { compactRowsBusy: 300 };
const server = await startSyncServer({ limits, fold: foldInThread, ...(log ? { log } : {}) });
server.addPlan("p");
const sessions = Object.fromEntries(["ines", "jonas", "sam"].map((user) => [user, server.host.signIn(user)]));
server.host.rights.set("sam", { writes: false });

const studio = openStudio({ clock: Date.now() });
let at = Date.now();
setInterval(() => {
  const now = Date.now();
  studio.advance(now - at);
  at = now;
}, 20);
const cookies = Object.fromEntries(await signInAll(studio, ["sam"]));
const env = { ...studio.app.env, mode: "live" as const, trustProxy: true };
setSpringline({ ...studio.app, env });
const { code } = must(addDevice(studio.app, studio.people.petra, { name: "By the door", roomId: ROOMS.loft }));
const routes = {
  "GET /api/health": healthRoute.GET,
  "POST /api/auth/sign-in/email": authRoute.POST,
  "POST /api/devices/pair": pairRoute.POST,
  "POST /api/first-run": firstRunRoute.POST,
  "POST /api/plans/import": importRoute.POST,
};
const { url: http } = await startRoutes({ env, routes });
const { origin } = env;
process.stdout.write(`${JSON.stringify({ url: server.url, http, origin, sessions, cookies, pairingCode: code })}\n`);
