/** The read-aloud check: opened once or twice in a coach's life with the program. */
import { late } from "#lib/client/late.ts";

export const lateReadAloud = late(() => import("./read-aloud-dialog.tsx").then((module) => module.ReadAloudDialog));
