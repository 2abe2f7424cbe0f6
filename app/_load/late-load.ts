/** The load of an item, fetched once the page can be used. */
import { loadLater } from "#lib/client/late.ts";

export const lateItemLoad = loadLater(() => import("./item-load.tsx").then((module) => module.ItemLoad));
