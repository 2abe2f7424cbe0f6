/** Hocuspocus with its SQLite extension as shipped: without sign-in, a document is stored some time later. */
import { SQLite } from "@hocuspocus/extension-sqlite";
import { Server } from "@hocuspocus/server";
import { answerParent } from "./child.ts";

const [, , folder = "."] = process.argv;
const extensions = [new SQLite({ database: `${folder}/hocuspocus.sqlite` })];
const server = new Server({ extensions, quiet: true, stopOnSignals: false });
answerParent(server.httpServer, { cookies: [] });
