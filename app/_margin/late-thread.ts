/** Fetched after the page: a thread, with what keeps it on its words. */
import { loadLater } from "#lib/client/late.ts";

export const lateThread = loadLater(() => import("./thread-slip.tsx").then((module) => module.ThreadSlip));
