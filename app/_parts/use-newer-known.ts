import { useSyncExternalStore } from "react";
import { newerBuild } from "#lib/client/newer-build.ts";

/** Whether the server has said that it runs another build than made this page. */
export const useNewerKnown = (): boolean =>
  useSyncExternalStore(
    newerBuild.subscribe,
    () => newerBuild.known,
    () => false,
  );
