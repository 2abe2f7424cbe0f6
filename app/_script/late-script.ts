/** Fetched after the page: the editor is a third of its script, and nobody writes before the plan is drawn. */
import { loadLater } from "#lib/client/late.ts";

export const lateScript = loadLater(() => import("./live-script.tsx").then((module) => module.LiveScript));
