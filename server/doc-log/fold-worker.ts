/** A thread that folds one state of a document's log, and ends. It only reads; its caller stores the result. */
import { parentPort, workerData } from "node:worker_threads";
import { openDatabase } from "#db/connection.ts";
import { foldState } from "#server/doc-log/stored-doc.ts";
import { lowerPriority } from "#server/worker-threads/lower-priority.ts";
import type { FoldData } from "./fold-in-thread.ts";

lowerPriority();
const { databaseFile, mark } = workerData as FoldData;
const db = openDatabase(databaseFile, { readOnly: true });
// One transaction, so that everything is read in the same state.
const bytes = db.raw.transaction(() => foldState(db, mark)).deferred();
db.close();
parentPort?.postMessage(bytes);
