/** The editor is a third of the page's script, and nobody writes before the plan stands. */
import { late } from "#lib/client/late.ts";

export const lateScript = late(() => import("./live-script.tsx").then((module) => module.LiveScript));
