/** The body map on a page that starts without it. */
import { loadLater } from "#lib/client/late.ts";

export const lateBodyMap = loadLater(() => import("./body-map.tsx").then((module) => module.BodyMap));
