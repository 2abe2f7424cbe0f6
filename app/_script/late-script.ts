/** The editor is a third of the page's script, and nobody writes before the plan stands. */
import { loadLater } from "#lib/client/late.ts";

export const lateScript = loadLater(() => import("./live-script.tsx").then((module) => module.LiveScript));
