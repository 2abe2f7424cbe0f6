/** The read-aloud check: opened once or twice in a coach's life with the program. */
import { loadLater } from "#lib/client/late.ts";

export const lateReadAloud = loadLater(() =>
  import("./read-aloud-dialog.tsx").then((module) => module.ReadAloudDialog),
);
