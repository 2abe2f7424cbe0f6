/** The checking thread where nothing is built: a thread takes no loader from the one that starts it. */
import { register } from "tsx/esm/api";

register();
await import("./worker.ts");
