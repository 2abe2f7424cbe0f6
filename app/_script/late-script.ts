/** Fetched after the page: the editor is a third of its script, and nobody writes before the plan is drawn. */
import { late } from "#lib/client/late.ts";

export const lateScript = late(() => import("./live-script.tsx").then((module) => module.LiveScript));
