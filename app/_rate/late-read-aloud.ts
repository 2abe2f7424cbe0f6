/** Fetched after the page: few coaches open the read-aloud check more than once or twice. */
import { loadLater } from "#lib/client/late.ts";

export const lateReadAloud = loadLater(() =>
  import("./read-aloud-dialog.tsx").then((module) => module.ReadAloudDialog),
);
