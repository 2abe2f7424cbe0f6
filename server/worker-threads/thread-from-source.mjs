/** Any thread where nothing is built: a thread takes no loader from the one that starts it. */
import { workerData } from "node:worker_threads";
import { register } from "tsx/esm/api";

register();
await import(workerData.source);
