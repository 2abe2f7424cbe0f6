/** Fetched after the page: the code that works figures out. */
import { loadLater } from "#lib/client/late.ts";

export const lateChange = loadLater(() => import("./change-drawn.tsx").then((module) => module.ChangeDrawn));
