/**
 * A sync server in a process of its own, to be attacked. Says one line of JSON with its address and the sessions of its
 * people, and keeps a plan `p` for them.
 */
import { startSyncServer } from "./sync-server.ts";

const server = await startSyncServer();
server.addPlan("p");
const sessions = Object.fromEntries(["ines", "jonas", "sam"].map((user) => [user, server.host.signIn(user)]));
server.host.rights.set("sam", { writes: false });
process.stdout.write(`${JSON.stringify({ url: server.url, sessions })}\n`);
