/** The search's key and button for a page that is to start soon: they come once it can be used. */
import { loadLater } from "#lib/client/late.ts";

const load = () => import("./find-here.tsx");
export const lateFindHere = loadLater(() => load().then(({ FindHere }) => FindHere));
export const lateFindButton = loadLater(() => load().then(({ FindButton }) => FindButton));
