/** Runs a thread's source when nothing is built: a thread does not inherit the loader of the one that starts it. */
import { workerData } from "node:worker_threads";
import { register } from "tsx/esm/api";

register();
await import(workerData.source);
