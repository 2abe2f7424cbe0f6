/** The load of an item, fetched once the page can be used. */
import { late } from "#lib/client/late.ts";

export const lateItemLoad = late(() => import("./item-load.tsx").then((module) => module.ItemLoad));
