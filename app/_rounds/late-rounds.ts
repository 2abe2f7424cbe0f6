/** Fetched after the page: few people compare at once. */
import { loadLater } from "#lib/client/late.ts";

export const lateComparing = loadLater(() => import("./comparing.ts").then((module) => module.Comparing));
export const lateChangesBar = loadLater(() => import("./changes-bar.tsx").then((module) => module.ChangesBar));
export const lateReadCount = loadLater(() => import("./changes-bar.tsx").then((module) => module.ReadCount));
export const latePlateChange = loadLater(() => import("./plate-change.tsx").then((module) => module.PlateChangePart));
