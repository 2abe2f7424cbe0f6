/** Fetched after the page: few coaches open the read-aloud check more than once or twice. */
import { late } from "#lib/client/late.ts";

export const lateReadAloud = late(() => import("./read-aloud-dialog.tsx").then((module) => module.ReadAloudDialog));
